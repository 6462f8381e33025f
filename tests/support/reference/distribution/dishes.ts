/**
 * From the dish to the output of a head unit: which slots come by which way, levels at the inputs of switches, noise over
 * carrier at the output. A head unit on a dish is its feed; a switch is fed by feeders, from dishes or from the switch
 * before it. Every input is judged at the ends of the feed's range: least at the highest frequency hot, most at the
 * lowest cold.
 */
import { isFilled, isSame, type Row } from "../job";
import { cableNamed, type Cable } from "./cable";
import { BOLTZMANN, DBUV_OF_DBM, decibelsOf, fromSky, ownNoise, timesOf, type FromSky } from "./sky";
import { namedAlike, ownFaults } from "./rowFaults";
import { listIn, metresOf, numberIn, rowNamed, settingsOf, straight, wordIn, type Tables } from "./tables";

export interface Dish {
  readonly name: string;
  readonly row: Row;
  readonly metres: number;
  readonly offFocus: number;
  readonly slots: readonly string[];
  readonly feed: Row | undefined;
  /** Whether it cannot be worked out by its own row. */
  readonly isBad: boolean;
}

/**
 * Without a row one dish is assumed. Of several slots all but one lie off its focus: by how much must be said, where
 * carrier to noise is asked.
 */
const isUnsaid = ({ dishes, slots }: Tables): boolean =>
  !dishes.some((row) => isFilled(row, "dish")) &&
  slots.filter((row) => isFilled(row, "slot")).length > 1 &&
  slots.some((row) => isFilled(row, "slot") && isFilled(row, "eirp"));

export function dishesOf(tables: Tables): Dish[] {
  const rows = tables.dishes.filter((row) => isFilled(row, "dish"));
  const all = tables.slots.filter((row) => isFilled(row, "slot")).map((row) => String(row.slot));
  const size = numberIn(settingsOf(tables), "size");
  if (rows.length === 0)
    return isUnsaid(tables)
      ? []
      : [{ name: "dish", row: {}, metres: size, offFocus: 0, slots: all, feed: undefined, isBad: false }];
  return rows.map((row) => {
    const slots = isFilled(row, "slots") ? listIn(row, "slots") : all;
    const isUnknown = slots.some((slot) => !all.some((known) => isSame(known, slot)));
    const feed = rowNamed(tables.feeds, "feed", row.feed);
    return {
      name: String(row.dish),
      row,
      metres: numberIn(row, "size", size),
      offFocus: numberIn(row, "off_focus", 0),
      slots: isUnknown ? [] : slots,
      feed,
      isBad:
        isUnknown || (isFilled(row, "feed") && !feed) || (slots.length > 1 && !isFilled(row, "off_focus")),
    };
  });
}

export const isOnDish = (kind: Row): boolean => wordIn(kind, "sits", "on the dish") === "on the dish";

/** The dish whose feed a head unit is; nothing for a switch, or where it is not known or is bad itself. */
export function dishOf(tables: Tables, head: Row, kind: Row): Dish | undefined {
  if (!isOnDish(kind)) return undefined;
  const dishes = dishesOf(tables);
  const named = isFilled(head, "dish")
    ? dishes.find(({ name }) => isSame(name, head.dish))
    : dishes.length === 1
      ? dishes[0]
      : undefined;
  return named?.isBad ? undefined : named;
}

/**
 * The slots of a dish that a head unit on it takes: as many as its kind has, after those of the head units on the same
 * dish that stand before it.
 */
function slotsTaken(tables: Tables, head: Row, kind: Row, dish: Dish): readonly string[] {
  let first = 0;
  for (const other of tables.head_units) {
    if (other === head) break;
    const its = rowNamed(tables.head_unit_kinds, "kind", other.kind);
    if (its && dishOf(tables, other, its)?.name === dish.name) first += numberIn(its, "slots", 1);
  }
  return dish.slots.slice(first, first + numberIn(kind, "slots", 1));
}

export interface Feeder {
  readonly row: Row;
  readonly index: number;
  /** The one or the other. */
  readonly dish: Dish | undefined;
  readonly from: Row | undefined;
  readonly to: Row;
  readonly slots: readonly string[];
  readonly cables: number;
  readonly metres: number;
  readonly cable: Cable | undefined;
}

/** A head unit that is bad by its row, or a switch of which no sound feeder comes. */
export function isBadHead(tables: Tables, head: Row): boolean {
  const kind = rowNamed(tables.head_unit_kinds, "kind", head.kind);
  if (ownFaults(tables).has(head) || namedAlike(tables).includes(head) || !kind) return true;
  if (!isOnDish(kind)) return !feedersOf(tables).some(({ to }) => to === head);
  return !dishOf(tables, head, kind) || isUnsaid(tables);
}

/** Feeders whose ends are known and sound. */
export function feedersOf(tables: Tables): Feeder[] {
  const known = knownFeeders(tables);
  const bad = new Set<Row>([...ownFaults(tables).keys(), ...namedAlike(tables)]);
  for (let before = -1; before !== bad.size;) {
    before = bad.size;
    for (const { to } of known) {
      const sound = known.filter((feeder) => feeder.to === to && !(feeder.from && bad.has(feeder.from)));
      if (sound.length === 0) bad.add(to);
    }
  }
  return known.filter(({ from, to }) => !bad.has(to) && !(from && bad.has(from)));
}

/**
 * Whether a switch gets other than as many cables for a slot as its kind takes: too few are said at the last feeder that
 * has some, too many at the one with which they are.
 */
export function isMiscounted(tables: Tables, feeder: Feeder): boolean {
  const kind = rowNamed(tables.head_unit_kinds, "kind", feeder.to.kind)!;
  const wanted = numberIn(kind, "per_slot", 4);
  return feeder.slots.some((slot) => {
    const some = feedersOf(tables).filter(({ to, slots }) => to === feeder.to && slots.includes(slot));
    const until = (list: readonly Feeder[]): number =>
      list.reduce((sum, { cables, slots }) => sum + cables / slots.length, 0);
    const place = some.findIndex(({ row }) => row === feeder.row);
    if (until(some.slice(0, place + 1)) > wanted + EXACT) return true;
    return place === some.length - 1 && until(some) < wanted - EXACT;
  });
}
const EXACT = 1e-9;

function knownFeeders(tables: Tables): Feeder[] {
  const settings = settingsOf(tables);
  const dishes = dishesOf(tables);
  const slotsAt = (head: Row, depth: number): string[] =>
    depth > tables.feeders.length
      ? []
      : tables.feeders.filter((row) => isSame(row.to, head.head)).flatMap((row) => slotsFrom(row, depth));
  function slotsFrom(row: Row, depth: number): string[] {
    if (isFilled(row, "slot")) return listIn(row, "slot");
    const dish = dishes.find(({ name }) => isSame(name, row.from));
    if (dish) return [...dish.slots];
    const head = rowNamed(tables.head_units, "head", row.from);
    return head ? slotsAt(head, depth + 1) : [];
  }
  return tables.feeders.flatMap((row, index) => {
    const dish = dishes.find(({ name }) => isSame(name, row.from));
    const from = dish ? undefined : rowNamed(tables.head_units, "head", row.from);
    const to = rowNamed(tables.head_units, "head", row.to);
    const kind = to && rowNamed(tables.head_unit_kinds, "kind", to.kind);
    if (!kind || !(dish ?? from) || dish?.isBad) return [];
    const slots = slotsFrom(row, 0);
    const asked = numberIn(kind, "per_slot", 4) * slots.length;
    return [
      {
        row,
        index,
        dish,
        from,
        to: to!,
        slots,
        cables: numberIn(row, "how_many", asked),
        metres: metresOf(tables, numberIn(row, "length", 0)),
        cable: cableNamed(tables, String(isFilled(row, "cable") ? row.cable : settings.cable)),
      },
    ];
  });
}

/** What a slot comes to at a head unit. */
export interface SlotAt {
  readonly slot: string;
  /** The dish that it comes from. */
  readonly dish: string | undefined;
  readonly sky: FromSky | undefined;
  /** Levels at the input of a switch, dBµV; not there for a head unit on a dish. */
  readonly input: { readonly least: number; readonly most: number } | undefined;
  /** Noise over carrier at the output, ratios. */
  readonly clear: number | undefined;
  readonly inRain: number | undefined;
}

const kelvins = (celsius: number): number => celsius + 273.15;

/** Noise over carrier that a loss adds at its output, where the carrier has `level` dBµV. */
export const ofLoss = (loss: number, level: number, celsius: number, rate: number): number =>
  ratio(kelvins(celsius) * (1 - timesOf(-loss)), level, rate);
/** The same of an amplifier or receiver, at its input. */
export const ofAmplifier = (noiseFigure: number, level: number, rate: number): number =>
  ratio(ownNoise(noiseFigure), level, rate);
const ratio = (noiseKelvins: number, level: number, rate: number): number =>
  timesOf(decibelsOf(BOLTZMANN * noiseKelvins * rate * 1000) - (level - DBUV_OF_DBM));

/** On its way from the feed to an input: level and noise over carrier at the feed's highest frequency, hot. */
interface OnTheWay {
  readonly slot: string;
  readonly dish: string;
  readonly sky: FromSky | undefined;
  readonly feed: Row;
  readonly least: number;
  readonly most: number;
  readonly added: number;
}

/** What comes in at a switch, slot by slot, before its own noise. */
function arriving(tables: Tables, head: Row, depth = 0): OnTheWay[] {
  const settings = settingsOf(tables);
  const [cold, hot] = [numberIn(settings, "cold"), numberIn(settings, "hot")];
  if (depth > tables.feeders.length) return [];
  const highest = (feed: Row): number => numberIn(feed, "if_high", numberIn(settings, "high"));
  const lowest = (feed: Row): number => numberIn(feed, "if_low", numberIn(settings, "low"));
  const lost = (way: OnTheWay, hotLoss: number, coldLoss: number): OnTheWay => {
    const least = way.least - hotLoss;
    const added = way.sky ? ofLoss(hotLoss, least, hot, way.sky.symbolRate) : 0;
    return { ...way, least, most: way.most - coldLoss, added: way.added + added };
  };
  return feedersOf(tables)
    .filter(({ to }) => to === head)
    .flatMap(({ dish, from, slots, cable, metres }) => {
      let ways: OnTheWay[] = [];
      if (dish?.feed)
        ways = slots.map((slot) => {
          const sky = fromSky(tables, slot, dish, numberIn(dish.feed!, "noise_figure"));
          const level = (sky?.carrier ?? NaN) + numberIn(dish.feed!, "gain") + DBUV_OF_DBM;
          return { slot, dish: dish.name, sky, feed: dish.feed!, least: level, most: level, added: 0 };
        });
      const kind = from && rowNamed(tables.head_unit_kinds, "kind", from.kind);
      if (kind) {
        const onward = straight(tables, numberIn(kind, "onward_low"), numberIn(kind, "onward_high"));
        ways = arriving(tables, from, depth + 1)
          .filter(({ slot }) => slots.some((wanted) => isSame(wanted, slot)))
          .map((way) => lost(way, onward(highest(way.feed)), onward(lowest(way.feed))));
      }
      return ways.map((way) =>
        lost(
          way,
          cable?.loss(metres, highest(way.feed), hot) ?? 0,
          cable?.loss(metres, lowest(way.feed), cold) ?? 0,
        ),
      );
    });
}

/** @returns every slot that a head unit delivers */
export function slotsAt(tables: Tables, head: Row, kind: Row): SlotAt[] {
  const figure = numberIn(kind, "noise_figure");
  const dish = dishOf(tables, head, kind);
  if (isOnDish(kind))
    return (dish ? slotsTaken(tables, head, kind, dish) : []).map((slot) => {
      const sky = Number.isNaN(figure) ? undefined : fromSky(tables, slot, dish!, figure);
      return { slot, dish: dish?.name, sky, input: undefined, clear: sky?.clear, inRain: sky?.inRain };
    });
  return arriving(tables, head).map(({ slot, dish: from, sky, least, most, added }) => {
    const isAsked = sky && !Number.isNaN(figure);
    const more = isAsked ? added + ofAmplifier(figure, least, sky.symbolRate) : NaN;
    return {
      slot,
      dish: from,
      sky,
      input: { least, most },
      clear: isAsked ? sky.clear + more : undefined,
      // Before the head unit levels its output, the carrier itself is weaker in rain.
      inRain: isAsked && sky.inRain !== undefined ? sky.inRain + more * timesOf(sky.rain!) : undefined,
    };
  });
}
