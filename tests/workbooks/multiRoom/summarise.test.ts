/** The figures of a job, read from a few cells: what is weakest first, and what is blank or in error. */
import { summarise } from "../../../src/workbooks/multiRoom/summarise";
import { namedBook } from "../../support/namedBook";

test("a job in figures; a blank is null, an error its sentence", () => {
  const { worst, headUnits, ...figures } = summarise(
    namedBook({
      site_job: ["House"],
      count_outlets: [24],
      quote_net: [1000],
      quote_tax: [{ error: "#VALUE!", message: "No rate." }],
      quote_total: [""],
      site_currency: ["EUR"],
    }),
  );
  expect(figures).toMatchObject({
    job: "House",
    outlets: 24,
    tuners: null,
    net: 1000,
    tax: "No rate.",
    total: null,
    currency: "EUR",
    verdict: "",
  });
  expect([worst, headUnits]).toEqual([[], []]);
});

test("the five weakest outlets: those in error first, then by their margin", () => {
  const { worst } = summarise(
    namedBook({
      rooms_outlet: ["", "A", "B", undefined, "C", "D", "E", "F", "G", ""],
      rooms_room: ["", "1", "2", "3", "4", "5", "6", "7", "8", ""],
      rooms_margin: ["", 5, 1, -9, "", 3, 2, 9, -1, ""],
      rooms_weakest: ["", 52, 48, 38, { error: "#N/A" }, 50, 49, 56, 46, ""],
      rooms_verdict: ["", "ok", "ok", "ok", "bad", "ok", "ok", "ok", "weak", ""],
      rooms_check_trouble: ["", "", "", "", "No such cable.", "", "", "", "1 dB short.", ""],
    }),
  );
  expect(worst.map(({ outlet }) => outlet)).toEqual(["C", "G", "B", "E", "D"]);
  expect(worst.slice(0, 2)).toEqual([
    { outlet: "C", room: "4", weakest: "#N/A", margin: null, verdict: "bad", trouble: "No such cable." },
    { outlet: "G", room: "8", weakest: 46, margin: -1, verdict: "weak", trouble: "1 dB short." },
  ]);
});

test("each head unit that has a name, with the figures of its row", () => {
  const { headUnits } = summarise(
    namedBook({
      heads_id: ["", "H1", "", "H2", ""],
      heads_fed_tuners: ["", 8, 1, 4, ""],
      heads_fed_bands: ["", 16, 1, 8, ""],
      heads_fed_least: ["", 12.5, 1, "", ""],
      heads_least: ["", 10.5, 1, 10, ""],
      heads_verdict: ["", "ok", "?", "low", ""],
      heads_check_trouble: ["", "", "?", "No supply.", ""],
    }),
  );
  expect(headUnits).toEqual([
    { id: "H1", tuners: 8, bands: 16, volts: 12.5, least: 10.5, verdict: "ok", trouble: "" },
    { id: "H2", tuners: 4, bands: 8, volts: null, least: 10, verdict: "low", trouble: "No supply." },
  ]);
});
