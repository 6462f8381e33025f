/** What the heads of a survey mean. The words are those that people use; common practice, no source. */
import {
  guessesOf,
  isNumbered,
  isOther,
  isUnitText,
  unitBelow,
  unitNamed,
} from "../../../src/workbooks/survey/headWords";
import { isFloorHeading } from "../../../src/workbooks/survey/floorWords";

const likeliest = (head: string): [string, number] | undefined => {
  const [best] = guessesOf(head);
  return best && [best.key, best.weight];
};

describe("a whole head is sure", () => {
  test.each([
    ["floor", ["Floor", "Etage", "Geschoß", "Piano", "Kondygnacja", "storey"]],
    ["room", ["Room", "Room No.", "Zimmer-Nr.", "Pièce", "Habitación", "pokój"]],
    ["outlet", ["Outlet", "OUTLET ID", "Outlet_No", "Antennendose", "prise", "gniazdo"]],
    ["receiver", ["Receiver", "Gerät", "récepteur", "odbiornik", "set-top box"]],
    ["quantity", ["Qty", "Anzahl", "Stück", "quantité", "ilość", "Menge"]],
    ["from", ["Fed from", "gespeist von", "alimenté par", "supplied from"]],
    ["cable", ["Cable", "Kabeltyp", "type de câble", "przewód"]],
    ["run", ["Run", "Length", "Länge", "długość", "Cable length (m)", "LENGTH_FT", "længde", "længde [m]"]],
    ["plate", ["Wall plate", "Dosentyp", "face-plate"]],
    ["shortest", ["Min.", "Shortest run", "kürzeste"]],
    ["longest", ["Max", "longest run (m)", "längste"]],
    ["route", ["Route", "Trasse"]],
    ["port", ["Port", "Port no."]],
    ["split", ["Split by"]],
    ["kept", ["User bands kept"]],
    ["kind", ["Price group", "Room type"]],
    ["note", ["Notes", "Bemerkung", "Remarks:", "bemærkning", "poznámka"]],
    ["outlets", ["No. of outlets", "Outlets", "Anzahl Dosen"]],
    ["further", ["In room", "length in room (m)", "im Zimmer"]],
  ])("%s", (key, heads) => {
    for (const head of heads) expect([head, likeliest(head)]).toEqual([head, [key, 1]]);
  });

  test.each([
    ["the room", "room"],
    ["approx. length", "run"],
    ["Estimated run", "run"],
    ["est. length (m)", "run"],
    ["measured length", "run"],
    ["Length approx.", "run"],
    ["Run est", "run"],
    ["ca. Länge", "run"],
  ])("%s, with a word that says no more", (head, key) => {
    expect(likeliest(head)).toEqual([key, 1]);
  });

  test.each([
    ["Length (m)", "run"],
    ["Length [ft]", "run"],
    ["Length in m", "run"],
    ["Length, m", "run"],
    ["Length / m", "run"],
    ["Length in", "run"],
    ["Length (planned)", "run"],
    ["Outlet*", "outlet"],
    ["  ROOM   NO ", "room"],
    ["Outlet (see drawing", "outlet"],
  ])("%s, whatever marks and brackets it has", (head, key) => {
    expect(likeliest(head)).toEqual([key, 1]);
  });

  test("of one that has two meanings both are told, the likelier first", () => {
    expect(guessesOf("Device").map(({ key }) => key)).toEqual(["receiver", "from"]);
  });

  test("one that is often another program's own word is less sure", () => {
    for (const [head, key] of [
      ["ID", "outlet"],
      ["Name", "outlet"],
      ["Space", "room"],
      ["Set", "receiver"],
      ["Type", "type"],
      ["Count", "quantity"],
    ])
      expect(likeliest(head!)).toEqual([key, 0.8]);
  });
});

describe("a longer head is likely what its words name", () => {
  test.each([
    ["Cable length to riser cupboard", ["run", "cable"]],
    ["Outlet in survey", ["outlet"]],
    ["Qty receivers wanted", ["receiver", "quantity"]],
    ["Longest cable", ["longest", "cable"]],
    ["Remarks by owner", ["note"]],
    ["Room and floor", ["room", "floor"]],
    ["Gesamtkabellänge", ["run"]],
    ["Wandplatte plate", ["plate"]],
    ["Verteiler im Keller", ["from"]],
    ["Decoder wanted", ["receiver"]],
  ])("%s", (head, keys) => {
    const guesses = guessesOf(head);
    // More words than four are a sentence, unless it begins with its own.
    expect(guesses.map(({ key }) => key)).toEqual(head.split(" ").length > 4 ? [] : keys);
    expect(guesses.every(({ weight }) => weight === 0.7)).toBe(true);
  });

  test("up to four words, and seven where it begins with the word for a length", () => {
    expect(likeliest("one two three outlet")).toEqual(["outlet", 0.7]);
    expect(likeliest("one two three four outlet")).toBeUndefined();
    expect(likeliest("length from the riser to the outlet")?.[0]).toBe("run");
    expect(likeliest("run a b c d e f")?.[0]).toBe("run");
    expect(likeliest("run a b c d e f g")).toBeUndefined();
  });

  test.each([
    ["Flo", "floor"],
    ["Otlt", "outlet"],
    ["Outle", "outlet"],
    ["Recvr", "receiver"],
    ["Rx", "receiver"],
    ["Cabl", "cable"],
    ["Lngth", "run"],
    ["Lgth", "run"],
    ["Plt", "plate"],
    ["Rmks", "note"],
  ])("%s, cut short", (head, key) => {
    expect(guessesOf(head)).toEqual([{ key, weight: 0.7 }]);
  });

  test("what is cut short is none within other words", () => {
    expect(guessesOf("Lngth xyz")).toEqual([]);
  });

  test("nothing but a unit is a run", () => {
    expect(guessesOf("(m)")).toEqual([{ key: "run", weight: 0.8 }]);
    expect(guessesOf("ft")).toEqual([{ key: "run", weight: 0.8 }]);
    expect(guessesOf("metres")[0]!.key).toBe("run");
    expect(guessesOf("(max)")).toEqual([]);
  });

  test("no text, and one too long to be a head", () => {
    expect(guessesOf("")).toEqual([]);
    const head = (length: number): string => `outlet ${"x".repeat(length - 7)}`;
    expect(guessesOf(head(60))).toHaveLength(1);
    expect(guessesOf(head(61))).toEqual([]);
  });
});

describe("what looks like one of ours and is another thing", () => {
  test.each([
    "Height",
    "Ceiling height (m)",
    "Raumhöhe",
    "Area m²",
    "Price",
    "Room area (sqm)",
    "Cable price",
    "Date",
    "Level (dBµV)",
    "Level dB",
    "Level [dBuV]",
    "Level at outlet (dBm)",
    "Outlet height",
    "Floor area",
    "Cable diameter",
    "Room used",
    "run used",
  ])("%s", (head) => {
    expect(isOther(head)).toBe(true);
    expect(guessesOf(head)).toEqual([]);
  });

  test.each(["Room", "Length", "Level", "Run", "Outlet", "Used", "No. of beds wanted for"])(
    "%s is none of these, or is asked by its own words",
    (head) => {
      expect(isOther(head)).toBe(/beds/.test(head));
    },
  );

  test("no page of text is looked through", () => {
    expect(isOther(`price ${"x".repeat(54)}`)).toBe(true);
    expect(isOther(`price ${"x".repeat(55)}`)).toBe(false);
  });

  test.each(["No.", "Nr", "#", "Pos.", "Item", "Line", "Lfd. Nr.", "S/No", ""])(
    "%j is a number of lines",
    (head) => {
      expect(isNumbered(head)).toBe(true);
    },
  );

  test.each(["Room no", "Outlet", "Not", "Number of outlets", `No${" ".repeat(60)}x`])(
    "%s is not",
    (head) => {
      expect(isNumbered(head)).toBe(false);
    },
  );
});

describe("the unit that a head names", () => {
  test.each([
    ["run (ft)", "ft"],
    ["Run [M]", "m"],
    ["run ( in ft )", "ft"],
    ["Länge (en m)", "m"],
    ["length_m", "m"],
    ["Length, feet", "feet"],
    ["length in metres", "metres"],
    ["Length mm", "mm"],
    ["run (')", "'"],
    ["ft", "ft"],
    ["feet", "feet"],
    ["Meters", "meters"],
    // Not known, and told all the same.
    ["run (km)", "km"],
    ["run (rods)", "rods"],
    // The one behind the brackets counts where they hold none.
    ["run (approx) m", "m"],
  ])("%s: %s", (head, unit) => {
    expect(unitNamed(head)).toBe(unit);
  });

  test.each([
    "run",
    "run (m or ft)",
    "run (max)",
    "run (est.)",
    "run (to riser)",
    "run (riser)",
    "run (measured on site)",
    "run (12)",
    "Room",
    `run ${"x".repeat(56)} (m)`,
  ])("%s: none", (head) => {
    expect(unitNamed(head)).toBeUndefined();
  });
});

describe("a line of units below the heads", () => {
  test.each([
    ["m", "m"],
    ["(m)", "m"],
    ["[ft]", "ft"],
    ["in feet", "ft"],
    ["Metres", "m"],
    ["cm.", "cm"],
    ["inches", "in"],
  ])("%s", (text, unit) => {
    expect([isUnitText(text), unitBelow(text)]).toEqual([true, unit]);
  });

  test("that of our own workbooks is the one that Site names", () => {
    expect([isUnitText("m or ft"), unitBelow("m or ft")]).toEqual([true, undefined]);
  });

  test.each(["12 m", "kg", "", "metres of cable", `(${" ".repeat(60)}m)`])("%j is none", (text) => {
    expect(isUnitText(text)).toBe(false);
  });
});

describe("a heading of a floor", () => {
  test.each([
    "Ground floor",
    "2nd floor",
    "Level 3",
    "EG",
    "1. OG",
    "Erdgeschoss",
    "1er étage",
    "Piso 2",
    "Basement",
    "East wing",
    "Block B",
    "L2",
    "3F",
    "RDC",
    "First",
  ])("%s", (text) => {
    expect(isFloorHeading(text)).toBe(true);
  });

  test.each(["Kitchen", "A-1", "Look behind the door", "Floored", "12"])("%s is none", (text) => {
    expect(isFloorHeading(text)).toBe(false);
  });

  test("one of more than 32 signs is a remark", () => {
    expect(isFloorHeading(`floor ${"x".repeat(26)}`)).toBe(true);
    expect(isFloorHeading(`floor ${"x".repeat(27)}`)).toBe(false);
  });
});
