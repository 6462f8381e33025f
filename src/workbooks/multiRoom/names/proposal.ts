import { anyText, oneOf } from "../../asks";
import { asked, block, entry, fields } from "../../names";

export const payment = block("payment", {
  text: entry(
    "Terms of payment",
    { width: 60 },
    anyText("When what is paid, a sentence a row, as it stands on the proposal", {
      example: "30 days after the invoice",
    }),
  ),
});

export const warranty = block("warranty", {
  text: entry(
    "Warranty",
    { width: 60 },
    anyText("What you stand for and how long, a sentence a row, as it stands on the proposal", {
      example: "Workmanship: two years from the day of handing over",
    }),
  ),
});

const wanted = (what: string, usual: "yes" | "no") =>
  asked(
    `On the proposal: ${what}`,
    { note: `Blank is ${usual}.` },
    oneOf(["yes", "no"], `Whether it stands on the proposal; blank is ${usual}`),
  );

/** What the proposal says of the firm, and which parts it has. */
export const proposal = fields("proposal", {
  registration: asked(
    "Registration number",
    {},
    anyText("Of the firm, as it stands under the letterhead; with what it is called where you work", {
      example: "Trade register 12345",
    }),
  ),
  tax_number: asked(
    "Tax number",
    {},
    anyText("Of the firm, as it stands under the letterhead; with what it is called where you work", {
      example: "VAT number 12345",
    }),
  ),
  offer: wanted("what is offered by floor or room type", "yes"),
  schedule: wanted("room schedule", "yes"),
  diagram: wanted("one-line diagram", "no"),
  sky: wanted("slots and obstacles", "no"),
  lines: wanted("price line by line", "yes"),
  acceptance: wanted("acceptance to sign", "yes"),
  paper: asked("Paper of the proposal", { note: "Blank is a4." }, oneOf(["a4", "letter"], "The paper")),
});
