/**
 * What people call the columns of a survey, in the languages of the writings that a workbook can choose (from
 * memory): whole heads, which are sure, and single words of longer heads, which are likely.
 */
import { asFigures } from "../typed/plainText";
import { FURTHER, OUTLETS, unitSpelled, type LengthUnit } from "./meanings";

/** Compared without capitals, accents, marks, brackets and units. */
const WHOLE: Readonly<Record<string, string>> = {
  floor:
    "lvl|flr|floor|floor no|floors|storey|story|level|building|etage|geschoss|stockwerk|stock|piano|plan|" +
    "vaning|planta|piso|verdieping|bouwlaag|fl|og|block|wing|deck|level code|floor code|andar|pietro|" +
    "kondygnacja|patro|podlazi|poschodie|kerros|emelet|szint|etasje|sal",
  room:
    "space|room|rooms|room no|room number|room name|location|suite|zimmer|zimmer nr|raum|raum nr|" +
    "raumnummer|raumbezeichnung|zimmernummer|piece|chambre|salle|stanza|camera|locale|habitacion|" +
    "sala|rum|kamer|ruimte|rm|place|where|flat|apartment|unit|space no|space number|bed room|bedroom|cabin|" +
    "cabin no|stateroom|ward|cell|quarto|divisao|compartimento|pokoj|pomieszczenie|mistnost|miestnost|izba|" +
    "huone|szoba|helyiseg|vaerelse|rom",
  outlet:
    "jack|jack no|outl|tv jack|tv outlet no|outlet|outlet id|outlet no|outlet name|outlet number|outlet ref|outlet tag|id|point|point id|" +
    "point no|drop|drop id|drop no|dose|dosen nr|dosennummer|dosen id|dose nr|antennendose|" +
    "steckdose|prise|prise no|no prise|n prise|presa|toma|uttag|socket|socket no|socket id|tag|" +
    "gniazdo|gniazdo nr|zasuvka|pistorasia|aljzat|tomada|stikkontakt|stikk|ucastnicka zasuvka|" +
    "label|ref|reference|tv point|tv outlet|tv point no|tv socket|aansluiting|contactdoos|udtag|" +
    "name|code",
  receiver:
    "set|terminal|terminal equipment|recv|rcvr|tv set|receiver|receivers kind|receiver kind|receiver type|type of receiver|kind|box|equipment|" +
    "odbiornik|prijimac|vastaanotin|vevo|recetor|mottagare|modtager|mottaker|terminal type|" +
    "gerat|geratetyp|recepteur|ricevitore|receptor|empfanger|ontvanger|device|what is connected|" +
    "connected|stb|set top box|appareil|apparecchio|equipo",
  quantity:
    "quantity|receivers|qty|pieces|pcs|how many|anzahl|stuck|stk|quantite|qte|cantidad|cant|" +
    "qtd|szt|ilosc|pocet|ks|kpl|lkm|darab|db szam|no off|" +
    "quantita|aantal|antal|menge|no of receivers|number of receivers|nb|nombre|count",
  from:
    "fed|fed from|from|fed by|device|splitter|branch|feed|source|head unit|von|ab|gespeist von|" +
    "speisung|verteiler|depuis|alimente par|desde|da|fran|fra|van|repartiteur|distributor|" +
    "supplied from|supply from",
  cable:
    "cbl|cabling type|cable to use|cable|cable type|cable kind|type of cable|kabel|kabeltyp|kabelart|kabeltype|type de cable|" +
    "przewod|kaapeli|cabo|kabla|" +
    "cavo|tipo cavo|tipo de cable|leitung|coax|wire",
  run:
    "length from riser|distance to riser|cable len|run|length|lengths|cable length|run length|cable run|length to riser|length of cable|lange|" +
    "home run|route len|route length|dlugosc|dlugosc kabla|delka|delka kabelu|dlzka|dlzka kabla|pituus|hossz|" +
    "comprimento|kabel m|" +
    "kabellange|leitungslange|longueur|longueur cable|longueur de cable|lunghezza|lunghezza cavo|" +
    "longitud|longitud cable|longitud de cable|langd|kabellangd|lengte|kabellengte|langde|" +
    "laengde|kabellaengde|lengde|kabellengde|laenge|kabellaenge|distance|entfernung|metres|meters|metre|meter|metrage|mtrs|feet|total length|total run|" +
    "lange gesamt|gesamtlange|longueur totale|len|cable metres",
  plate:
    "pl|socket cover|plate type|wall plate|plate|wallplate|faceplate|face plate|outlet type|type of outlet|socket type|" +
    "dosentyp|dosenart|type de prise|plaque|placca|placa|abdeckung|tipo presa|tipo de toma|cover",
  shortest:
    "shortest run|shortest|min|minimum|min length|minimum length|length min|shortest length|" +
    "min run|run min|kurzeste|lange min|least|minimal",
  longest:
    "longest run|longest|max|maximum|max length|maximum length|length max|longest length|max run|" +
    "run max|langste|lange max|most|maximal",
  route: "route|cable route|way|trasse|weg|chemin|path|verlegeart|cheminement",
  port: "port|port no",
  split: "split by",
  type: "type",
  kept: "user bands kept|kept user bands",
  kind: "price group|room kind|room type|category",
  note:
    "note|notes|remark|remarks|comment|comments|bemerkung|bemerkungen|anmerkung|anmerkungen|" +
    "hinweis|hinweise|remarque|remarques|observation|observations|commentaire|nota|" +
    "note e osservazioni|osservazioni|observaciones|opmerking|opmerkingen|info|anmarkning|" +
    "bemaerkning|bemerkning|access|details|uwagi|poznamka|poznamky|huomautus|huom|megjegyzes|observacoes|" +
    "fixing note|fixing notes",
  [OUTLETS]:
    "outlets|no of outlets|number of outlets|points|no of points|number of points|sockets|" +
    "no of sockets|how many outlets|outlet count|anzahl dosen|dosen|nombre de prises|prises|" +
    "numero prese|prese|tomas",
  [FURTHER]:
    "length in room|in room length|further length|length in room|in room|room length|length 2|im zimmer|dans la piece|" +
    "extra length|extra|plus",
};

/** Words of a longer head; the earlier of two kinds that it names goes before. */
const WORDS: readonly (readonly [key: string, words: RegExp])[] = [
  ["shortest", /^(?:shortest|min|minimum)$/],
  ["longest", /^(?:longest|max|maximum)$/],
  ["note", /^(?:notes?|remarks?|comments?|bemerkung(?:en)?|remarques?|observations?)$/],
  [
    "run",
    /^(?:length|lengths|run|metres|meters|lange|\w+lange|longueur|lunghezza|longitud|lengte|langd|distance|riser)$/,
  ],
  ["plate", /^(?:plate|wallplate|faceplate|plaque|placca)$/],
  ["from", /^(?:fed|from|splitter|gespeist|verteiler|alimente)$/],
  ["cable", /^(?:cable|kabel|\w*kabeltyp|cavo|coax)$/],
  ["receiver", /^(?:receivers?|decoder|empfanger|recepteur|ricevitore)$/],
  ["quantity", /^(?:qty|quantity|anzahl|aantal|quantite)$/],
  ["outlet", /^(?:outlet|point|socket|dose|\w*dosen?|prise|presa|toma|drop)$/],
  ["room", /^(?:rooms?|zimmer|raum|chambre|stanza|habitacion|location)$/],
  ["floor", /^(?:floor|storey|etage|geschoss|stockwerk|piano|planta|piso|level)$/],
];

/** Cut short, or written without its vowels. */
const SHORTENED: readonly (readonly [key: string, word: RegExp])[] = [
  ["floor", /^fl(?:o|oo|r)?$/],
  ["outlet", /^outl?e?$|^otlt$/],
  ["receiver", /^rec(?:v|vr|ei|eiv|eive)?$|^rx$/],
  ["cable", /^c(?:ab|abl|bl)$/],
  ["run", /^l(?:en|eng|engt|gth|ng|ngth)$/],
  ["plate", /^pl(?:t|at)?$/],
  ["note", /^(?:rem|rmk|rmks|comm|bem)$/],
];

/** What looks like one of ours and is another thing. */
const OTHERS =
  /\b(?:heights?|hohe|raumhohe|hauteur|altezza|altura|areas?|flache|surface|superficie|sqm|m2|m²|width|breite|largeur|price|preis|prix|cost|rate|date|datum|time|phone|tel|beds?|betten|guests?|diameter|volts?|age|labour|minutes|hours|surveyor|checked|initials|invoice|amount|ceiling)\b/;
/** A level in decibels is no level of a house. */
const DECIBELS = /\bdb(?:m|[uμ]v)?\b/;
/** Of our own Rooms sheet: what counts at the outlet, beside what was entered. */
const WORKED_OUT =
  /^(?:floor|room|outlet|receiver|how many|fed from|run|wall plate|route|port|split by|user bands kept|shortest run|longest run|price group) used$/;
/** A running number, or a name, as what stands below it shows. */
const NUMBERED = /^(?:no|nr|n|number|num|pos|position|item|line|lfd|lfd nr|lfdnr|sl|sl no|s no|sr no|#|)$/;

/** No head is as long: patterns are not tried on a page of text. */
const LONGEST_HEAD = 60;
const UNIT_AT_END =
  /(?:^|[\s,_/])(?:in |en )?(m|cm|mm|ft|feet|foot|inch|inches|yd|metres?|meters?|mtrs?)\.?$/i;

/** Heads that are as often another program's own number: less sure than a word for an outlet. */
const GENERAL =
  /^(?:id|type|name|code|ref|reference|label|tag|set|space|place|where|unit|fed|plus|extra|kind|count)$/;

const KEYS_OF = new Map<string, string[]>();
for (const [key, heads] of Object.entries(WHOLE))
  for (const head of heads.split("|")) KEYS_OF.set(head, [...(KEYS_OF.get(head) ?? []), key]);

export interface HeadGuess {
  readonly key: string;
  /** 1 for a whole head, less for a word of one. */
  readonly weight: number;
}

/** @returns what a head may mean, the likeliest first; none for a text that is no head of ours */
export function guessesOf(text: string): HeadGuess[] {
  if (text === "" || text.length > LONGEST_HEAD) return [];
  if (DECIBELS.test(plainHead(text, true))) return [];
  const plain = plainHead(text);
  const without = plain.replace(
    /^(?:the|approx|estimated|est|ca|measured|planned) | (?:approx|estimated|est|ca)$/g,
    "",
  );
  const whole = KEYS_OF.get(plain) ?? KEYS_OF.get(without);
  if (whole) return whole.map((key) => ({ key, weight: GENERAL.test(plain) ? 0.8 : 1 }));
  if (plain === "" && unitNamed(text) !== undefined) return [{ key: "run", weight: 0.8 }];
  if (isOther(text)) return [];
  const words = without.split(" ");
  // A longer head is a sentence, unless it begins with its own word.
  if (words.length > (/^(?:length|longueur|lange|run)$/.test(words[0]!) ? 7 : 4)) return [];
  const short = words.length === 1 ? SHORTENED.find(([, pattern]) => pattern.test(words[0]!)) : undefined;
  if (short) return [{ key: short[0], weight: 0.7 }];
  return WORDS.flatMap(([key, pattern]) =>
    words.some((word) => pattern.test(word)) ? [{ key, weight: 0.7 }] : [],
  );
}

export const isOther = (head: string): boolean =>
  head.length <= LONGEST_HEAD &&
  (DECIBELS.test(plainHead(head, true)) ||
    ((OTHERS.test(plainHead(head, true)) || WORKED_OUT.test(plainHead(head))) &&
      !KEYS_OF.has(plainHead(head))));

/** "No.", "Pos", or nothing. */
export const isNumbered = (head: string): boolean =>
  head.length <= LONGEST_HEAD && NUMBERED.test(plainHead(head));

function plainHead(text: string, withBrackets = false): string {
  const bare = asFigures(text)
    .toLowerCase()
    .replace(/\s*[([]([^)\]]*)[)\]]?/g, withBrackets ? " $1 " : " ")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ß/g, "ss")
    .replace(/ø/g, "o")
    .replace(/æ/g, "ae")
    .replace(/ł/g, "l")
    .replace(/[._/\\:*°º–—-]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  return withBrackets
    ? bare
    : bare
        .replace(UNIT_AT_END, "")
        .replace(/[,\s]+$/, "")
        .replace(/ in$/, "");
}

/** The unit that a head names: `run (ft)`, `Run [m]`, `length_m`; undefined where it names none. */
export function unitNamed(head: string): string | undefined {
  if (head.length > LONGEST_HEAD) return undefined;
  const plain = head.trim().toLowerCase();
  const bracketed = /[([]\s*(?:in |en )?([^)\]]*?)\s*[)\]]/.exec(plain)?.[1];
  const atEnd = UNIT_AT_END.exec(plain)?.[1];
  if (bracketed === EITHER) return undefined;
  if (bracketed !== undefined && (unitSpelled(bracketed) || MAYBE_UNIT.test(bracketed))) return bracketed;
  return atEnd ?? KEY_IS_UNIT.exec(plain)?.[0];
}

/** In brackets: a unit, whether we know it or not. */
const MAYBE_UNIT =
  /^(?!(?:ca|est|approx|max|min|tot|total|incl|excl|each|no|id|riser|room|drop|cable|planned|measured)\.?$)[a-zµ°]{1,8}\.?$/;
/** A head that is nothing but a unit. */
const KEY_IS_UNIT = /^(?:feet|metres|meters|mtrs)$/;
/** Our own workbooks name a length's unit so: it is the one that Site names. */
const EITHER = "m or ft";
/** Below a head row some people, and our own workbooks, write the units. */
const UNIT_BELOW =
  /^[([]?\s*(?:in )?(m or ft|m|ft|cm|mm|feet|foot|inch|inches|metres?|meters?)\.?\s*[)\]]?$/i;

export const isUnitText = (text: string): boolean => text.length <= LONGEST_HEAD && UNIT_BELOW.test(text);

/** The unit that a line of units has for a column; undefined where it has none. */
export function unitBelow(text: string): LengthUnit | undefined {
  const named = UNIT_BELOW.exec(text)?.[1]?.toLowerCase();
  return named === undefined || named === EITHER ? undefined : unitSpelled(named);
}
