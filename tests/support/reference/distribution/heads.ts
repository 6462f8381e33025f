/** Volts, amperes and checks of head units, and the volts of the feeds that they power. */
import { isFilled } from "../job";
import { feedersOf, isBadHead, isOnDish } from "./dishes";
import { statesFor, type State } from "./supply";
import { numberIn, rowNamed, type Answer } from "./tables";
import type { HeadUnit } from "./tree";
import {
  everyState,
  fedBackwards,
  isHigher,
  isLower,
  leastIn,
  leastOf,
  outletsOf,
  LEAST_AMPS,
  POWERED,
  SLIGHT,
  statesAt,
  statesInUse,
  voltsIn,
  type Worked,
} from "./worked";

export interface HeadFigures {
  readonly off: number;
  readonly leastAlone: number | undefined;
  readonly leastIs: string | undefined;
  readonly allOn: number;
  readonly leastInUse: number | undefined;
  readonly ampsAtLeast: number | undefined;
  readonly supplyAmps: number | undefined;
  readonly ampsOff: number;
  readonly ampsAlone: number | undefined;
  readonly ampsAllOn: number;
}

/** A switch has to work for those that hang on it. */
function handsOn({ tables, tree }: Worked, head: HeadUnit): boolean {
  const below = feedersOf(tables).flatMap(({ from, to }) => (from === head.row ? [to] : []));
  return tree.heads.some(({ row }) => below.includes(row));
}

export function headFigures(worked: Worked, head: HeadUnit): HeadFigures {
  const states = statesAt(worked, head);
  const volts = (state: State | undefined): number => voltsIn(state, (one) => one.headVolts(head));
  const amps = (state: State | undefined): number => voltsIn(state, (one) => one.headAmps(head));
  const outlets = outletsOf(worked, head);
  const alone = outlets.flatMap((outlet) => statesFor(outlet, states.alone));
  const least = leastOf(alone, ({ state }) => volts(state));
  const inUse = [...statesInUse(worked, head, outlets), ...(handsOn(worked, head) ? [states.allOn] : [])];
  const leastState =
    inUse.length > 0
      ? leastOf(
          inUse.map((state) => ({ state })),
          ({ state }) => volts(state),
        )
      : undefined;
  const supply = rowNamed(worked.tables.supplies, "supply", head.row.supply);
  return {
    off: volts(states.off),
    leastAlone: least && volts(least.state),
    leastIs: least?.unit.outlet.name,
    allOn: volts(states.allOn),
    leastInUse: leastState && volts(leastState.state),
    ampsAtLeast: leastState && amps(leastState.state),
    supplyAmps:
      supply && Math.max(...everyState(states).map((state) => state.supplyAmps(`output ${head.name}`))),
    ampsOff: amps(states.off),
    ampsAlone: least && amps(least.state),
    ampsAllOn: amps(states.allOn),
  };
}

/** Least volts at the feeds that a head unit powers, with their least, by dish. */
export function feedVolts(worked: Worked): { dish: string; slot: string; volts: number; least: number }[] {
  return worked.systems.flatMap(({ system, states }) => {
    const isFedAnyway = system.heads.some(
      (head) => voltsIn(states.off, (state) => state.headVolts(head)) >= POWERED,
    );
    const inUse = [...(isFedAnyway ? [states.off] : []), ...states.alone.values(), states.allOn];
    return system.feeds.map(({ dish, slot, node, least }) => ({
      dish,
      slot,
      volts: leastIn(inUse.flatMap((state) => (state ? [state.volts(node)] : []))) ?? 0,
      least,
    }));
  });
}

export function headChecks(worked: Worked, head: HeadUnit): Answer[] {
  const { tables, slots } = worked;
  const { kind, row } = head;
  const figures = headFigures(worked, head);
  const supply = rowNamed(tables.supplies, "supply", row.supply);
  const inputs = (slots.get(head) ?? [])
    .flatMap(({ input }) => input ?? [])
    .filter(({ least }) => !Number.isNaN(least));
  let input: Answer = null;
  if (inputs.length > 0 && (isFilled(kind, "in_least") || isFilled(kind, "in_most"))) {
    input = "ok";
    if (isLower(Math.min(...inputs.map(({ least }) => least)), numberIn(kind, "in_least", -Infinity)))
      input = "low";
    else if (isHigher(Math.max(...inputs.map(({ most }) => most)), numberIn(kind, "in_most", Infinity)))
      input = "high";
  }
  const dishes = feedersOf(tables)
    .filter(({ to, dish }) => to === row && dish)
    .map(({ dish }) => dish!.name);
  const feeds = feedVolts(worked).filter(({ dish }) => dishes.includes(dish));
  const isBad = isBadHead(tables, row);
  const isFedBackwards = fedBackwards(worked, head).includes(`output ${head.name}`);
  return [
    isBad ? "bad" : "ok",
    !(isBad && !isOnDish(kind)) &&
    figures.leastInUse !== undefined &&
    isLower(figures.leastInUse, numberIn(kind, "least_volts"), SLIGHT)
      ? "low"
      : "ok",
    isFedBackwards || isHigher(figures.supplyAmps ?? 0, numberIn(supply ?? {}, "amps", Infinity), SLIGHT)
      ? "high"
      : "ok",
    input,
    feeds.length === 0
      ? null
      : feeds.some(({ volts, least }) => isLower(volts, least, SLIGHT))
        ? "low"
        : "ok",
    figures.supplyAmps === undefined
      ? null
      : isFedBackwards || figures.supplyAmps >= LEAST_AMPS
        ? "ok"
        : "unused",
  ];
}
