/**
 * Whole heads of price lists in the other languages of the writings that a workbook can choose: Swedish, Danish,
 * Norwegian, Finnish, Polish, Czech, Slovak, Hungarian, Italian, Portuguese; from memory. Compared as plain words.
 */
/** As headMeaning.ts has it, which reads these first. */
type Key =
  | "article"
  | "description"
  | "unit"
  | "pack"
  | "price"
  | "perUnit"
  | "perPack"
  | "withTax"
  | "from"
  | "until";
type Meaning = { readonly key: Key; readonly net?: boolean } | { readonly unused: true };

const HEADS: readonly (readonly [heads: string, meaning: Meaning])[] = [
  [
    "artnr|art nr|artikelnr|varenr|varunr|varenummer|indeks|kod|kod towaru|symbol|nr kat|numer|cislo|cislo zbozi|" +
      "obj cislo|kod zbozi|kod tovaru|cislo tovaru|cod|codice|codigo|referencia|tuotenumero|tuotenro|cikkszam|cikkszám",
    { key: "article" },
  ],
  [
    "benamning|betegnelse|benaevnelse|navn|namn|nazwa|nazwa towaru|opis|nazev|nazov|popis|oznaceni|nimike|" +
      "tuotenimi|kuvaus|megnevezes|nev|denominazione|designacao|particulars",
    { key: "description" },
  ],
  [
    "enhet|enhed|j m|jm|jednostka|jedn|mj|m j|merna jednotka|merna jedn|u m|yksikko|yks|egyseg|me|unid|uom|sold by",
    { key: "unit" },
  ],
  [
    "forp|forpackning|forpackn|pakning|pakn|emballage|opak|opakowanie|baleni|balenie|ks v baleni|conf|confezione|" +
      "embalagem|pakkaus|pkt|kiszereles|csomag|std pkg|cond",
    { key: "pack" },
  ],
  [
    "cena za mj|cena za ks|cena za kus|cena za jm|cena jedn|cena jednostkowa|egysegar|a-pris|apris|yksikkohinta",
    { key: "perUnit" },
  ],
  ["cena za baleni|cena za opak|cena za opakowanie|hinta pkt", { key: "perPack" }],
  ["cena netto|netto cena|cena bez dph|cena bez vat|nettopris|netpris|netto ar", { key: "price", net: true }],
  ["cena|pris|preco|hinta|ar|rate|cena mj", { key: "price" }],
  ["cena brutto|cena s dph|cena z vat|brutto ar|pris inkl moms|pris med moms", { key: "withTax" }],
  [
    "galler fran|gyldig fra|plati od|platne od|wazne od|obowiazuje od|ervenyes tol|valido dal|valido de",
    { key: "from" },
  ],
  [
    "galler till|galler t o m|gyldig til|plati do|platne do|wazne do|ervenyes ig|valido fino al|valido ate",
    { key: "until" },
  ],
  [
    "e-nummer|enummer|e-nr|el-nummer|elnr|el nr|vikt|vikt kg|vaegt|vekt|waga|hmotnost|vat|vat %|dph|dph %|moms|" +
      "moms %|btw|btw %|iva|iva %|tva|tva %|mwst|mwst %|ust|gst|gst %|hsn|hsn code|moq|s no|sl no|l p|lp|poz|" +
      "eco-part|ecotaxe|copper|kopertoeslag",
    { unused: true },
  ],
];

const MEANING_OF = new Map(
  HEADS.flatMap(([heads, meaning]) => heads.split("|").map((head) => [head, meaning])),
);

/** @param bare the head in plain words, without brackets and currencies */
export const headElsewhere = (bare: string): Meaning | undefined =>
  MEANING_OF.get(bare.replace(/[.:]+/g, " ").replace(/\s+/g, " ").trim());
