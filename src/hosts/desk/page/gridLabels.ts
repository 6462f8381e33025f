/**
 * Names and an order of focus for what the grid library (19.3.7) leaves without: a screen reader says nothing of a
 * field that has no name, and a positive tabindex goes before all that is ours. Its templates are text when they come.
 */
const LABELS: readonly (readonly [found: RegExp, instead: string])[] = [
  [/(<TextInput\s+)(t-key="selectionKey")/, `$1placeholder="'Cell, or a name to go to'" $2`],
  [
    /(type="number"\s+)(t-att-min="props\.min"\s+t-att-max="props\.max"\s+class="o-font-size)/,
    `$1t-att-aria-label="props.title" $2`,
  ],
  [/(class="o-grid-add-rows-input)/, `aria-label="Rows to add at the bottom" $1`],
  [
    /(class="o-composer w-100 text-start"[^>]*?)tabindex="1"/,
    `$1tabindex="0" role="textbox" aria-label="Content of the selected cell"`,
  ],
];

/** @returns the library's templates with names; as they were where it is written otherwise */
export const withLabels = (templates: string): string =>
  LABELS.reduce((text, [found, instead]) => text.replace(found, instead), templates);
