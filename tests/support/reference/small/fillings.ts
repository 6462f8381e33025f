/** Invented fillings of the small templates, drawn from a seed; about half of them with blanks and bad entries. */
import { questions, ratio } from "../../../../src/workbooks/quoteReview/names";
import { drawn, type Drawn, type Row } from "../../drawn";
import type { Job } from "../job";

const TYPES = ["6", "7", "11", "59"].flatMap((series) =>
  ["", ", copper", ", copper-clad steel"].map((metal) => `series ${series}${metal}`),
);

/** In half of the fillings some cells are left blank, and some hold what does not belong there. */
function spoilt(draw: Drawn, fields: Row, bad: Readonly<Record<string, readonly (number | string)[]>>): Row {
  const spoils = draw.chance(0.6) ? 3 : 0;
  const names = draw.shuffled(Object.keys(bad));
  const copy = { ...fields };
  for (const name of names.slice(0, spoils))
    if (draw.chance(0.4)) delete copy[name];
    else copy[name] = draw.pick(bad[name]!);
  return copy;
}

export function singleDropFilling(seed: number): Job {
  const draw = drawn(1000 + seed);
  const isFeet = draw.chance(0.4);
  const low = draw.pick([5, 87, 950, 1000]);
  const fields: Row = {
    drop_job: `drop ${seed} (demonstration)`,
    drop_cable: draw.pick(TYPES),
    drop_unit: isFeet ? "ft" : "m",
    drop_length: isFeet ? draw.between(10, 400, 1) : draw.between(3, 120, 1),
    drop_ways: draw.pick([1, 2, 3, 4, 6, 8]),
    drop_excess: draw.between(0, 3, 1),
    drop_plate: draw.between(0, 3, 1),
    drop_low: low,
    drop_high: low + draw.whole(1, 1300),
    drop_cold: draw.whole(-30, 5),
    drop_hot: draw.whole(20, 70),
    drop_in_low: draw.between(60, 100, 1),
    drop_in_high: draw.between(60, 100, 1),
    drop_least: draw.pick([47, 47, 50, 45]),
    drop_most: draw.pick([77, 77, 80, 70]),
    ...(draw.chance(0.7)
      ? {
          drop_load: draw.between(0.1, 1, 2),
          drop_supply: draw.pick([13, 18, 24]),
          drop_volts_least: draw.pick([10.5, 12]),
        }
      : { drop_load: 0 }),
  };
  return {
    fields: spoilt(draw, fields, {
      drop_job: ["   "],
      drop_cable: ["garden hose", "series 8"],
      drop_unit: ["yd"],
      drop_length: [0, -4, 2001, "long"],
      drop_ways: [0, 65, 2.5, "two"],
      drop_excess: [-1, 31],
      drop_plate: [-0.5, 31],
      drop_low: [0.95, 3001, 4],
      drop_high: [2.15, 3001],
      drop_cold: [-61, 95, "cold"],
      drop_hot: [-70, 91],
      drop_in_low: [10, 141],
      drop_in_high: [10, 141],
      drop_least: [78, 19],
      drop_most: [46, 121],
      drop_supply: [0.5, 61],
      drop_load: [-1, 11, 5],
      drop_volts_least: [0, 30],
    }),
    blocks: {},
  };
}

export function alignmentCardFilling(seed: number): Job {
  const draw = drawn(2000 + seed);
  const isEast = draw.chance(0.4);
  const longitude = isEast ? draw.between(-25, 55, 2) : draw.between(-145, -65, 2);
  const slots = isEast ? ["13E", "19E", "13.5e"] : ["97W", "113W", "105 w"];
  const slot = (): string => (draw.chance(0.2) ? "97Q" : draw.pick(slots));
  const here = draw.between(50, 70, 1);
  const fields: Row = {
    card_job: `card ${seed} (demonstration)`,
    card_date: 46_000 + draw.whole(0, 900),
    card_latitude: draw.pick([1, -1]) * draw.between(5, 55, 2),
    card_longitude: longitude,
    card_height: draw.whole(0, 2000),
    card_offset: draw.between(0, 30, 1),
    card_dish: draw.pick([0.6, 0.9, 1.2]),
    card_frequency: 11_700,
  };
  const axis = (): string => draw.pick(["azimuth", "elevation", "tilt"]);
  const peak = (): Row => ({
    ...(draw.chance(0.9) ? { what: "dish" } : {}),
    axis: axis(),
    ...(draw.chance(0.7) ? { kind: draw.pick(["dB", "dB", "dB", "percent"]) } : {}),
    step: draw.between(0.5, 1.5, 1),
    here,
    plus: Number((here - draw.between(-0.5, 6, 1)).toFixed(1)),
    minus: Number((here - draw.between(-0.5, 6, 1)).toFixed(1)),
  });
  const holed = (row: Row): Row => {
    const copy = { ...row };
    if (draw.chance(0.3)) delete copy[draw.pick(["axis", "step", "here", "plus", "minus"])];
    else if (draw.chance(0.2))
      Object.assign(copy, draw.pick<Row>([{ step: 31 }, { plus: 201 }, { axis: "up" }]));
    return copy;
  };
  return {
    fields: spoilt(draw, fields, {
      card_job: [" "],
      card_date: ["soon"],
      card_latitude: [91, "north"],
      card_longitude: [181],
      card_height: [-501],
      card_offset: [61, -1],
      card_dish: [0.1],
      card_frequency: [900],
    }),
    blocks: {
      slots: Array.from({ length: draw.whole(0, 4) }, () => ({ slot: slot() })),
      peaks: Array.from({ length: draw.whole(0, 4) }, () => (draw.chance(0.1) ? {} : holed(peak()))),
    },
  };
}

const ratioLabels = Object.values(ratio).flatMap((one) => ("words" in one ? [one.words.label] : []));
const { rule: answer } = questions.answer.words.input!;
const ANSWERS = answer.kind === "choice" ? answer.choices : [];
/** Some in capitals, and one that there is not. */
const RATIOS = [...ratioLabels, ratioLabels[0]!.toUpperCase(), "colour of the van"];

export function quoteReviewFilling(seed: number): Job {
  const draw = drawn(3000 + seed);
  const cents = (value: number): number => Number(value.toFixed(2));
  const lines: Row[] = Array.from({ length: draw.whole(0, 5) }, () => {
    const [quantity, each] = [draw.whole(1, 9), draw.between(1, 200, 2)];
    const line: Row = {
      part: "part",
      quantity,
      each,
      sum: cents(draw.chance(0.8) ? quantity * each : quantity + each),
    };
    if (draw.chance(0.15)) delete line[draw.pick(["part", "quantity", "each", "sum"])];
    if (draw.chance(0.05)) line.quantity = "some";
    return draw.chance(0.1) ? {} : line;
  });
  const [hours, rate] = [draw.whole(5, 60), draw.whole(40, 70)];
  const materials = draw.between(800, 3000, 2);
  const labour = hours * rate;
  const [contingency, overhead, margin] = [
    draw.pick([0, 0.03]),
    draw.pick([0.1, 0.12]),
    draw.pick([0.2, 0.25]),
  ];
  const cost = cents((materials + labour) * (1 + contingency) * (1 + overhead));
  const price = cents(draw.chance(0.7) ? cost / (1 - margin) : cost * (1 + margin));
  const extras = draw.whole(0, 300);
  const net = cents(price + extras);
  const rateTax = draw.pick([0.2, 0.19, 0.0775]);
  const tax = cents(net * rateTax + draw.pick([0, 0, 0, 5]));
  const tuners = draw.whole(10, 40);
  const fields: Row = {
    review_tolerance: 0.05,
    review_job: "invented (demonstration)",
    review_until: 46_100 + draw.whole(-10, 60),
    review_date: 46_100,
    review_reviewer: "demonstration",
    review_outlets: draw.whole(8, 30),
    review_tuners: tuners,
    review_bands: draw.pick([8, 16]),
    review_heads: Math.ceil(tuners / 16) + draw.whole(0, 1),
    review_cable: draw.whole(100, 900),
    review_materials: materials,
    review_hours: hours,
    review_rate: rate,
    review_labour: labour,
    review_contingency: contingency,
    review_overhead: overhead,
    review_cost: cost,
    review_margin: margin,
    review_price: price,
    review_extras: extras,
    review_net: net,
    review_taxed: net,
    review_rate_tax: rateTax,
    review_tax: tax,
    review_total: cents(net + tax + draw.pick([0, 0, 0, -10])),
  };
  const spoiled = Object.keys(fields).filter((name) => !["review_job", "review_tolerance"].includes(name));
  return {
    fields: spoilt(draw, fields, {
      ...Object.fromEntries(spoiled.map((name) => [name, [0]])),
      review_cost: ["much"],
      review_tax: ["none"],
      review_materials: ["some"],
    }),
    blocks: {
      lines,
      ranges: Array.from({ length: draw.whole(0, 8) }, (): Row => {
        const low = draw.between(0, 30, 1);
        const range: Row = draw.chance(0.75) ? { low, high: low + draw.whole(0, 300) } : {};
        return draw.chance(0.1) ? {} : { ratio: draw.pick(RATIOS), ...range };
      }),
      asked: Array.from({ length: draw.whole(0, 9) }, (): Row => ({
        question: "Is it settled?",
        ...(draw.chance(0.85) ? { answer: draw.pick(["yes", "YES", ...ANSWERS]) } : {}),
      })),
    },
  };
}
