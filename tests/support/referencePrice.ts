/**
 * A second pricing of a multi-room job, written apart from the product: plain
 * loops over the filled rows, equations from the handbooks, decimal arithmetic
 * for money. It imports nothing of the product but the job's rows.
 *
 * Cable loss: k1·√f + k2·f + k0 per 100 ft at 20 °C (tests/fixtures/published,
 * fit A of coax-attenuation.json), 0.198 % more for each °C. Loop resistance:
 * 0.127·92^((36−n)/39) mm conductors (ASTM B258), 0.017241 Ω·mm²/m, 21 % of
 * copper's conductivity for copper-clad steel (ASTM B869), screen figures from
 * memory; 0.393 % more for each °C.
 */
import DecimalJs from "decimal.js";
import coax from "../fixtures/published/coax-attenuation.json";

/** Digits enough that no quotient of a job's figures is cut where a tie would show. */
const Decimal = DecimalJs.clone({ precision: 60 });
type Decimal = DecimalJs;

type Row = Readonly<Record<string, number | string>>;
export interface Job {
  readonly fields: Row;
  readonly blocks: Readonly<Record<string, readonly Row[]>>;
}

const num = (row: Row, key: string): number => Number(row[key] ?? 0);
const find = (rows: readonly Row[], key: string, value: unknown): Row => {
  const found = rows.find((row) => row[key] === value);
  if (!found) throw new Error(`no ${key} ${String(value)}`);
  return found;
};

const AWG: Record<string, number> = { "59": 20, "6": 18, "7": 16, "11": 14 };
/** Ω per 1000 ft, from memory, ±40 %. */
const SCREEN: Record<string, number> = { "59": 12, "6": 9, "7": 6, "11": 4 };
const M_PER_FT = 0.3048;

export function cableLoss(like: string, metres: number, mhz: number, celsius: number): number {
  const series = /series (\d+)/.exec(like)![1]! as keyof typeof coax.series;
  const { k1, k2, k0 } = coax.series[series].fits.A;
  const per100ft = k1 * Math.sqrt(mhz) + k2 * mhz + k0;
  return (per100ft * metres * (1 + 0.00198 * (celsius - 20))) / (100 * M_PER_FT);
}

export function loopOhms(like: string, metres: number, celsius: number): number {
  const series = /series (\d+)/.exec(like)![1]!;
  const mm = 0.127 * 92 ** ((36 - AWG[series]!) / 39);
  const conductivity = like.endsWith(", copper") ? 1 : 0.21;
  const centre = 0.017241 / ((Math.PI * mm * mm) / 4) / conductivity;
  const screen = SCREEN[series]! / (1000 * M_PER_FT);
  return (centre + screen) * metres * (1 + 0.00393 * (celsius - 20));
}

/**
 * First fit in falling order, then in shaken orders, until the total length's
 * own bound is met: then it is proved least. On these jobs it always is.
 */
function leastReels(lengths: readonly number[], reel: number): number {
  const bound = Math.ceil(lengths.reduce((a, b) => a + b, 0) / reel);
  let seed = 1;
  const random = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
  for (let round = 0; round < 20_000; round++) {
    const shake = round === 0 ? 0 : 0.6;
    const order = lengths
      .map((length) => ({ length, key: length * (1 + shake * (random() - 0.5)) }))
      .sort((a, b) => b.key - a.key);
    const left: number[] = [];
    for (const { length } of order) {
      const at = left.findIndex((room) => room >= length);
      if (at >= 0) left[at]! -= length;
      else left.push(reel - length);
    }
    if (left.length === bound) return bound;
  }
  throw new Error(`no packing onto ${bound} reels was found`);
}

export interface Reference {
  readonly levels: ReadonlyMap<string, readonly number[]>;
  readonly volts: ReadonlyMap<string, number>;
  readonly net: string;
  readonly tax: string;
  readonly total: string;
}

export function referencePrice({ fields, blocks }: Job): Reference {
  const rows = (name: string): readonly Row[] => blocks[name] ?? [];
  const like = (cable: unknown): string => String(find(rows("cables"), "name", cable).like);
  const low = num(fields, "site_low");
  const high = num(fields, "site_high");
  const cold = num(fields, "site_cold");
  const hot = num(fields, "site_hot");
  const corners = [
    { f: low, t: cold, end: "low" },
    { f: low, t: hot, end: "low" },
    { f: high, t: cold, end: "high" },
    { f: high, t: hot, end: "high" },
  ];

  const headLevel = (id: unknown, c: (typeof corners)[number]): number => {
    const head = find(rows("heads"), "id", id);
    const out = num(find(rows("units"), "name", head.type), `out_${c.end}`);
    return out - cableLoss(like(head.cable), num(head, "length"), c.f, c.t);
  };
  /** Level at a branch's input, after its trunk. */
  const branchInput = (id: unknown, c: (typeof corners)[number]): number => {
    const branch = find(rows("branches"), "id", id);
    const trunk = cableLoss(like(branch.cable), num(branch, "length"), c.f, c.t);
    const above = rows("branches").find((row) => row.id === branch.from);
    if (!above) return headLevel(branch.from, c) - trunk;
    const device = find(rows("passives"), "name", above.device);
    const pass = device[`through_${c.end}`] ?? device[`port_${c.end}`];
    return branchInput(above.id, c) - Number(pass) - trunk;
  };
  const levels = new Map(
    rows("rooms").map((room) => [
      String(room.outlet),
      corners.map((c) => {
        const branch = rows("branches").find((row) => row.id === room.from);
        const source = branch
          ? branchInput(branch.id, c) - num(find(rows("passives"), "name", branch.device), `port_${c.end}`)
          : headLevel(room.from, c);
        const plate = num(find(rows("plates"), "name", room.plate), `loss_${c.end}`);
        return source - cableLoss(like(room.cable), num(room, "run"), c.f, c.t) - plate;
      }),
    ]),
  );
  /** Cables from where the supply stands to the head unit: an outlet's run, trunks, the head unit's own. */
  const pathOhms = (head: Row): number => {
    const over = (row: Row, length: string): number => loopOhms(like(row.cable), num(row, length), hot);
    let ohms = over(head, "length");
    const outlet = rows("rooms").find((row) => row.outlet === head.at);
    if (outlet) ohms += over(outlet, "run");
    for (
      let branch = rows("branches").find((row) => row.id === (outlet?.from ?? head.at));
      branch;
      branch = rows("branches").find((row) => row.id === branch!.from)
    )
      ohms += over(branch, "length");
    return ohms;
  };
  const volts = new Map(
    rows("heads").map((head) => {
      const supply = num(find(rows("supplies"), "name", head.supply), "volts");
      const unit = find(rows("units"), "name", head.type);
      const ohms = pathOhms(head);
      const load = num(unit, "load");
      const at =
        unit.kind === "W"
          ? (supply + Math.sqrt(supply * supply - 4 * load * ohms)) / 2
          : supply - load * ohms;
      return [String(head.id), at];
    }),
  );

  const outlets = rows("rooms").length;
  const branches = rows("branches").length;
  const heads = rows("heads").length;
  const each = (part: Row): Decimal =>
    new Decimal(num(part, "per_outlet"))
      .times(outlets)
      .plus(new Decimal(num(part, "per_branch")).times(branches))
      .plus(new Decimal(num(part, "per_head")).times(heads))
      .plus(num(part, "fixed"));
  const uses = (block: string, column: string, name: unknown): number =>
    rows(block).filter((row) => row[column] === name).length;
  const bought = (of: string, block: string, column: string): Decimal =>
    rows(of).reduce(
      (sum, part) =>
        // A receiver that feeds a head unit is there already.
        part.by === "a receiver"
          ? sum
          : sum.plus(new Decimal(num(part, "price")).times(uses(block, column, part.name))),
      new Decimal(0),
    );

  const runs = [
    ...rows("rooms").map((row) => [row.cable, num(row, "run")] as const),
    ...rows("branches").map((row) => [row.cable, num(row, "length")] as const),
    ...rows("heads").map((row) => [row.cable, num(row, "length")] as const),
  ];
  const cable = rows("cables").reduce((sum, part) => {
    const lengths = runs
      .filter(([name]) => name === part.name)
      .map(([, length]) => (length + num(fields, "site_slack")) * (1 + num(fields, "site_waste")));
    return sum.plus(new Decimal(num(part, "price")).times(leastReels(lengths, num(part, "reel"))));
  }, new Decimal(0));
  const fittings = rows("fittings").reduce(
    (sum, part) =>
      sum.plus(new Decimal(num(part, "price")).times(each(part).dividedBy(num(part, "pack")).ceil())),
    new Decimal(0),
  );
  /** Three-point mean (o + 4m + p) / 6 where a low and a high are given. */
  const minutes = (work: Row): Decimal =>
    work.low === undefined
      ? new Decimal(num(work, "minutes"))
      : new Decimal(num(work, "low"))
          .plus(new Decimal(num(work, "minutes")).times(4))
          .plus(num(work, "high"))
          .div(6);
  const labour = rows("labour").reduce(
    (sum, work) =>
      sum.plus(
        each(work)
          .times(minutes(work))
          .times(num(work, "difficulty"))
          .div(60)
          .times(num(fields, "labour_rate")),
      ),
    new Decimal(0),
  );
  const total = (block: string, of: (row: Row) => Decimal): Decimal =>
    rows(block).reduce((sum, row) => sum.plus(of(row)), new Decimal(0));
  const provisional = total("provisional", (row) => new Decimal(num(row, "sum")));
  const rule = fields.site_rounding === "half even" ? Decimal.ROUND_HALF_EVEN : Decimal.ROUND_HALF_UP;
  const cents = (value: Decimal): Decimal => value.toDecimalPlaces(2, rule);
  /** Each option prints at its own sum, so each is rounded. */
  const options = total("options", (row) =>
    row.chosen === "yes" ? cents(new Decimal(num(row, "each")).times(num(row, "quantity"))) : new Decimal(0),
  );
  const sections = [
    bought("units", "heads", "type").plus(bought("supplies", "heads", "supply")),
    cable.plus(bought("passives", "branches", "device")),
    bought("plates", "rooms", "plate").plus(fittings),
    labour,
  ];
  const share = (name: string): Decimal => new Decimal(num(fields, name));
  /** Multiplied before it is divided, so that what divides evenly does. */
  const sold = (section: Decimal): Decimal =>
    section
      .times(share("site_contingency").plus(1))
      .times(share("site_overhead").plus(1))
      .dividedBy(new Decimal(1).minus(share("site_margin")));
  const lines = [...sections.map(sold), provisional, options].map(cents);
  const before = lines.reduce((a, b) => a.plus(b));
  const labourLine = lines[3]!;
  const wholeBase =
    fields.site_tax_on === "labour only"
      ? labourLine
      : fields.site_tax_on === "materials only"
        ? before.minus(labourLine)
        : before;
  const discount =
    fields.discount_share === undefined
      ? new Decimal(num(fields, "discount_sum"))
      : cents(before.times(share("discount_share")));
  const net = before.minus(discount);
  // What remains after the discount is taxed: each part of the price bears its share of it, in whole cents.
  const taxable = before.isZero() ? wholeBase : cents(wholeBase.times(net).dividedBy(before));
  const tax = cents(taxable.times(share("site_tax")));
  return { levels, volts, net: net.toFixed(2), tax: tax.toFixed(2), total: net.plus(tax).toFixed(2) };
}
