/**
 * What the head of a column means, by its words: English, German, French, Spanish, Dutch; from memory of suppliers'
 * lists. The order counts: what is rarer and more telling is asked first.
 */
import { currenciesIn, withoutCurrencies } from "./currencies";
import { headElsewhere } from "./headsElsewhere";
import { plainWords } from "./plainWords";
import { basisOf, saleUnit, type Basis } from "./saleUnits";

/** What a column of a price list can be taken for. */
export const COLUMN_KEYS = [
  "article",
  "description",
  "unit",
  "pack",
  "per",
  "price",
  "perUnit",
  "perPack",
  "listPrice",
  "discount",
  "withTax",
  "currency",
  "from",
  "until",
  "fromQuantity",
  "status",
] as const;
export type ColumnKey = (typeof COLUMN_KEYS)[number];

export const COLUMN_NAMES: Readonly<Record<ColumnKey, string>> = {
  article: "Article number",
  description: "Description",
  unit: "Unit",
  pack: "In a pack, or on a reel",
  per: "Price is for so many",
  price: "Price",
  perUnit: "Price per unit",
  perPack: "Price per pack or reel",
  listPrice: "Price before discount",
  discount: "Discount",
  withTax: "Price with tax",
  currency: "Currency",
  from: "Valid from, or priced on",
  until: "Valid until",
  fromQuantity: "From this quantity",
  status: "Availability",
};

export const PRICE_KEYS: ReadonlySet<ColumnKey> = new Set([
  "price",
  "perUnit",
  "perPack",
  "listPrice",
  "withTax",
]);

export interface HeadMeaning {
  /** Absent for a column that is known and of no use here. */
  readonly key?: ColumnKey;
  /** It may be another as well, where that one has no column of its own. */
  readonly else?: ColumnKey;
  /** The quantity for which a price holds. */
  readonly basis?: Basis;
  /** A scale price: from so many on. */
  readonly from?: number;
  /** For consumers: of use only where no other price is there. */
  readonly retail?: boolean;
  /** It may be before a discount, or with tax: the word says either. */
  readonly gross?: boolean;
  readonly net?: boolean;
  /** A group of discounts. */
  readonly discountGroup?: boolean;
  /** It is known what the column is, and that it is of no use here. */
  readonly unused?: boolean;
  readonly currencies: readonly string[];
}

const w = (pattern: string): RegExp => new RegExp(`(?<![a-z])(?:${pattern})(?![a-z])`);

/** Whoever names groups of discounts gives prices before them. */
const DISCOUNT_GROUP = w(
  "(?:discount|rabatt?|remise|descuento|korting|sconto)[ -]?(?:group|gruppe|groupe|grupo|groep|gruppo|code|class|cat\\w*|klasse)|rabatt?gruppe|rabatt?klasse|kortingsgroep|rg|dg",
);

const UNUSED = [
  w("ean\\d*|gtin\\d*|upc|bar ?codes?|strichcode|code ?barres?|codigo de barras|streepjescode|gencod"),
  w(
    "(?:discount|rabatt|remise|descuento|korting\\w*)[ -]?(?:group|gruppe|groupe|grupo|groep|code|class|cat\\w*)|rabatt?gruppe|kortingsgroep|rg|dg|rk|wg|warengruppe|product group|group|gruppe|famille|familia|familie|categor\\w*|kategorie|groupe|grupo|groep|hersteller\\w*|manufacturer\\w*|maker|marke|brand|marque|marca|merk|fabricante?|fabrikant|lieferzeit|lead time|delivery|delai|plazo|levertijd|weight|gewicht|poids|peso|kg|colou?r|farbe|couleur|kleur|customs|zolltarif\\w*|hs code|taric|origin|ursprung\\w*|pos|position|line|zeile|ligne|moq|min(?:imum|dest|\\.)? ?(?:order|qty|bestell\\w*|quantity|menge|abnahme)?(?: qty| quantity)?|mindest\\w*|stock|bestand|lager\\w*|voorraad|page|seite|pagina|bild|image|picture|link|url|change|anderung|diff\\w*|% ?change",
  ),
  w(
    "(?:old|previous|former|last year'?s?|alter?|bisherig\\w*|vorjahr\\w*|ancien\\w*|anterior|oude?|vorige) ?(?:price|preis|prix|precio|prijs|tarif|tarifa)|(?:price|preis|prix|precio|prijs) (?:old|alt|ancien|anterior|oud|bisher)|altpreis|prix \\d{4}/ancien",
  ),
];

const PRICE = w(
  "prices?|\\w*preise?|prix|precios?|\\w*prijs|\\w*prijzen|\\w*pris|\\w*priser|prezz[oi]|preco|tarif|tarifa|tarief|cost|costs|ek|netto|net|nett|brutto|bruto|gross|amount|betrag|importe|bedrag|p\\.? ?u\\.?(?: ?h\\.?t\\.?)?|pu|puht|ht|h\\.t\\.?|ttc|uvp|rrp|msrp|pvp|vk|each|neto|listino|list",
);
const RETAIL = w(
  "rrp|r\\.r\\.p\\.?|msrp|srp|retail|recommended|uvp|empf\\w*|unverbindl\\w*|conseille|pvp|pvr|recomendado|advies\\w*|verkoopprijs|consumer|endkunden\\w*|vk",
);
const WITH_TAX = w(
  "ttc|t\\.t\\.c\\.?|incl?\\.? ?(?:vat|tax|btw|gst|mwst|ust|tva|iva)|including (?:vat|tax)|inkl\\.? ?(?:mwst|ust|steuer)|with (?:vat|tax)|taxes comprises|iva incl\\w*|con iva|incl\\.? btw|inc\\.? vat",
);
const GROSS = w("\\w*brutto\\w*|bruto\\w*|gross|bruttopreis|brut");
const NET = w(
  "\\w*netto\\w*|net|nett|neto|your price|ihr preis|ek|einkauf\\w*|trade(?: price)?|dealer|handler\\w*|inkoop\\w*",
);
const EX_TAX = w(
  "ht|h\\.t\\.?|hors taxes?|puht|excl?\\.? ?(?:vat|tax|btw|gst|mwst|ust|iva)|ex vat|excluding (?:vat|tax)|zzgl\\.? ?(?:mwst|ust)|exkl\\.? ?(?:mwst|ust)|ohne (?:mwst|ust)|sin iva",
);
const LIST = w(
  "list|\\w*liste?n?pri[sj]\\w*|listino|listen\\w*|listprice|catalogue?|katalog\\w*|catalogo|public|lijst\\w*|tarifa|bruttolisten\\w*",
);
const DISCOUNT = w(
  "discount|disc|sconto|\\w*rabatt?\\w*|nachlass|remise|rem|descuento|dto|dcto|korting|ristourne",
);
const PER_PACK = w(
  "(?:per|pro|je|par|por|le|la|a|/) ?(?:pack|packet|pk|pkt|box|bag|carton|reel|roll|drum|coil|vpe|ve|packung|pack\\.?|rolle|ring|karton|gebinde|beutel|spule|trommel|bund|boite|paquet|lot|conditionnement|cond|rouleau|touret|couronne|sachet|colis|bobine|caja|paquete|bolsa|rollo|bobina|envase|verpakking|doos|rol|pak|zak|haspel|ve)|(?:pack|reel|roll|box|bag|drum|coil|carton|vpe|ve|conditionnement|condt|cond|lot|paquete|caja|envase|rollo) ?-?(?:price|preis|precio|prijs|cost)|(?:price|preis|prix|precio|prijs)[ /]*(?:pack|vpe|ve|reel|roll|box|bag|cond\\w*|lot|colis|caja|paquete|envase|rollo|verpakking|rol|doos)|packungspreis|packpreis|vpe-?preis|ve-?preis|rollenpreis|ringpreis|gebindepreis|kartonpreis|verpakkingsprijs|pakprijs|rolprijs|doosprijs|reelprice|packprice",
);
const PER_UNIT = w(
  "(?:per|pro|je|par|por|a|à|le|la|au|/|l') ?(?:unit|unite|piece|pc|pcs|each|ea|item|m|mtr|metre|meter|ft|foot|stuck|st|stk|stck|einheit|eh|me|metro|unidad|ud|pieza|stuk|eenheid)|unit ?-?(?:price|cost)|each|einzelpreis|einheitspreis|stuckpreis|meterpreis|e-?preis|ep|p\\.? ?u\\.?|pu|puht|prix unitaire|prix unit|precio unitario|precio unit|p\\.? ?unit|unitario|unitaire|stuksprijs|eenheidsprijs|meterprijs|(?:price|preis|prix|precio|prijs)[ /]*(?:unit|st|stk|stuck|m|meter|einheit|unite|ud|unidad|stuk|eenheid|pc|ea|mtr)",
);
const PER =
  /^(?:pe|p\.e\.?|preiseinheit|preis-?einh\w*|preis per|preis je|preismenge|preisbasis|price (?:unit|per|basis|qty|quantity|for)|priced? per|pricing unit|price uom|per|base (?:de )?prix|unite (?:de )?prix|par|prix (?:par|pour)|unidad (?:de )?precio|base precio|precio (?:por|para)|por|prijs ?eenheid|prijs per|je|pro|prijs-?eenh\w*)$/;
const UNTIL = w(
  "until|valid (?:to|till|thru|through)|expir\\w*|end(?: date)?|(?:gultig|gilt|preis) bis|bis|jusqu.*|fin(?: de)? validite|date (?:de )?fin|fin|hasta|valid[oa] hasta|vigen\\w* hasta|caducidad|vencimiento|geldig tot.*|t/m|tot|eind\\w*|val\\.? to",
);
const FROM = w(
  "valid from|from date|effective(?: date)?|start(?: date)?|priced on|price date|date|datum|(?:gultig|gilt) (?:ab|von|seit)|ab datum|ab|stand|preis vom|date d.?effet|valable (?:du|a partir)|debut|valid[oa] desde|desde|vigencia|fecha|geldig (?:vanaf|van)|vanaf|ingang\\w*|from",
);
const CURRENCY = w("cur|currency|curr|ccy|wahrung|whg|wrg|devise|monnaie|moneda|divisa|valuta|munt");
const STATUS = w(
  "status|availability|verfugbar\\w*|disponibilite|disponibilidad|beschikbaar\\w*|lieferstatus|lifecycle|remarks?|notes?|bemerkung\\w*|hinweis\\w*|anmerkung\\w*|remarques?|observa\\w*|opmerking\\w*|comments?|info|notas?",
);
const PACK = w(
  "packs?|(?:std|standard|sales)?\\.? ?pkgs?|std\\.? ?(?:pack|qty)|packing|per (?:pack|box|bag|carton|reel|roll)|(?:pz|stk|st|pcs|uds|stuks|m|mtr)[ /.]+(?:conf|krt|karton|pk|pack|pak|pakke|box|bag|vpe|rolle|reel|ctn|doos|caja)|conf\\.?|confezione|forpackning|forpakning|pakning|pakke\\w*|antal|antall|box of|bag of|pack of|reel ?(?:m|ft)|roll ?(?:m|ft)|aufmasslange|pack(?:age)? ?-?(?:size|qty|quantity|unit)|qty ?(?:per|/|in) ?\\w+|units? per pack|pcs ?(?:per|/) ?\\w+|pieces per \\w+|vpe|v\\.p\\.e\\.?|ve|verpackung\\w*|verp\\.?-?\\w*|gebinde\\w*|inhalt|packungsgr\\w*|packungsinhalt|conditionnement|condit\\.?|condt\\.?|cond\\.?|colisage|qte ?(?:par|/) ?\\w+|unites? par \\w+|contenu|embalaje|envase|contenido|(?:unidades|uds|cantidad) (?:por|x) \\w+|uds/\\w+|verpakking\\w*|vpk|verp|inhoud|aantal per \\w+|stuks? per \\w+|reel(?: length| size|s)?|roll|drum|rolle|ring|trommel|spule|rouleau|touret|couronne|rollo|bobina|rol|haspel|roll length|rollenlange|ringlange|lange|length|box qty|box size|contents?|lot|spq|bag|box|carton|karton|menge(?: je \\w+| pro \\w+|/\\w+)?|quantity|qty|cantidad|quantite|qte|aantal",
);
const FROM_QUANTITY =
  /^(?:from|ab|des|a partir de|desde|vanaf|min(?:imum)?) ?(?:qty|quantity|menge|stuck|quantite|qte|cantidad|aantal)$|^(?:staffel\w*|ab-?menge|scale|break|price break|qty break|scale qty|scale from|break qty|quantity break|seuil|escala|tramo)$/;
const UNIT = w(
  "units?|sold (?:as|by|per)|enhed|enhet|unita|unidade|price is for|uom|u\\.?o\\.?m\\.?|u/m|um|m\\.?e\\.?|me|einheit\\w*|einh\\.?|mengeneinheit|mengeneinh\\.?|basiseinheit|bestelleinheit|verkaufseinheit|eh|unites?|unidad(?:es)?|ud|uds|u\\.|u|eenheid|eenh\\.?|measure|sold by|sales unit",
);
const ARTICLE = w(
  "vare-?(?:nr|nummer)\\.?|codice|cod|best\\.?-?nr|artikkel-?(?:nr|nummer)\\.?|itemno|partno|art\\.? ?-?(?:nr|no|num\\w*|code|#)\\.?|artikel-?(?:nr|nummer|no|num|code)\\.?|artnr|artikelnummer|sku|item ?-?(?:no|nr|number|code|#|ref)\\.?|items?#|part ?-?(?:no|nr|number|code|#|ref)\\.?|p/?n|product ?-?(?:no|nr|code|number|id|ref)\\.?|produkt-?(?:nr|nummer)\\.?|codes?|ref|refs|ref\\.|reference|references|referencia|codigo|cod\\.?|bestell-?(?:nr|nummer|no)\\.?|bestelnr|bestel(?:nummer|code)|order ?-?(?:code|no|nr|number|ref)\\.?|nr|no|nummer|number|numero|num|cat\\.? ?(?:no|nr)\\.?|catalogue (?:no|number)|stock (?:code|no)|material[ -]?(?:nr|nummer|no)\\.?|mat\\.?-?nr\\.?|n°|nº|id|codice|article (?:no|nr|number|code)|no d.article|no article|supplier (?:no|code|ref)|kat\\.?-?nr\\.?|teile-?nr\\.?",
);
const DESCRIPTION = w(
  "descriptions?|descrizione|descricao|tekst|beskrivelse|beskrivning|benamning|beteckning|varetekst|varenavn|desc|descr|bezeichnung\\w*|artikelbezeichnung|beschreibung|artikeltext|kurztext|text|langtext|designations?|libelle|intitule|denominat\\w*|description|descripcion|denominacion|concepto|detalle|omschrijving\\w*|artikelomschrijving|benaming|product ?name|item name|name|nom|nombre|naam|details?|benennung",
);
const EITHER = w(
  "articol[oi]|prodott[oi]|vare|varor|articles?|artikel|articulos?|items?|products?|produkte?|produits?|productos?|parts?|material|goods|ware|art",
);

/** "1+", "10 +", "ab 10", "from 10", ">= 10", "1-9", "10 - 99", "x10". */
const SCALE =
  /(?:^|[^\d.,])(?:(?:from|ab|>=?|≥|des|desde|vanaf|a partir de) ?(\d+)(?![.,/-]?\d)|(\d+) ?\+|(\d+) ?[-–] ?\d+(?! ?%)|(\d+) ?(?:and more|and up|und mehr|et plus|o mas|en meer|up))/;

export function headMeaning(head: string, own?: string): HeadMeaning {
  const currencies = currenciesIn(head, own);
  const plain = plainWords(withoutCurrencies(head).replace(/[\r\n]+/g, " "))
    .replace(/[:;*]+/g, " ")
    // Initials: "p.v.p." is "pvp".
    .replace(/(?<![a-z])(?:[a-z]\.){2,}[a-z]?(?![a-z])/g, (initials) => initials.replace(/\./g, ""));
  const bare = plain
    .replace(/[()[\]]/g, " ")
    .replace(/\s+/g, " ")
    .trim()
    // Not a stroke: where "EUR/m" stood, "/m" says for what the price is.
    .replace(/^[.-]+ ?|(?<=[a-z]{3})[.,]+$/g, "");
  const known = (found: Omit<HeadMeaning, "currencies">): HeadMeaning => ({ ...found, currencies });
  if (bare === "") return known(currencies.length > 0 ? { key: "price" } : {});
  const elsewhere = headElsewhere(bare);
  if (elsewhere) return known(elsewhere);
  if (UNUSED[0]!.test(bare) || UNUSED[2]!.test(bare)) return known({ unused: true });
  if (DISCOUNT_GROUP.test(bare)) return known({ unused: true, discountGroup: true });
  if (PER.test(bare)) return known({ key: "per" });
  const isPrice = PRICE.test(bare) || (currencies.length > 0 && !CURRENCY.test(bare));
  if (DISCOUNT.test(bare) && !UNUSED[1]!.test(bare) && !/preis|price|prix|precio|prijs/.test(bare))
    return known({ key: "discount" });
  if (FROM_QUANTITY.test(bare)) return known({ key: "fromQuantity" });
  const scale = SCALE.exec(bare);
  if (
    scale &&
    (isPrice || /^[^a-z]*(?:(?:from|ab|des|desde|vanaf|st|stk|pcs?|ea|qty|x|up)[^a-z]*)*$/.test(bare))
  ) {
    const from = Number(scale[1] ?? scale[2] ?? scale[3] ?? scale[4]);
    if (from > 0) return known({ key: "price", from });
  }
  if (
    isPrice &&
    !/^(?:price|preis|prix|precio|prijs)s? ?(?:date|datum|vom|gultig|valid\w*|until|bis)/.test(bare)
  ) {
    if (CURRENCY.test(bare)) return known({ key: "currency" });
    return known(priceOf(bare));
  }
  if (UNTIL.test(bare)) return known({ key: "until" });
  if (CURRENCY.test(bare)) return known({ key: "currency" });
  if (
    ARTICLE.test(bare) &&
    !DESCRIPTION.test(bare) &&
    !w("manufacturer\\w*|hersteller\\w*|fabri\\w*|customs|zoll\\w*|hs").test(bare)
  )
    return known({ key: "article" });
  if (DESCRIPTION.test(bare)) return known({ key: "description" });
  if (UNUSED[1]!.test(bare)) return known({ unused: true });
  const basis = /^(?:per|pro|je|par|por|les|\/) ?/.test(bare) ? basisInHead(bare) : undefined;
  if (basis && basis.unit !== "pack" && basis.unit !== "reel") return known({ key: "perUnit", basis });
  if (PACK.test(bare) && !/^(?:artikel|article|art)/.test(bare)) return known({ key: "pack" });
  if (UNIT.test(bare)) return known({ key: "unit" });
  if (FROM.test(bare)) return known({ key: "from" });
  if (STATUS.test(bare)) return known({ key: "status" });
  if (EITHER.test(bare)) return known({ key: "description", else: "article" });
  return known({});
}

function priceOf(bare: string): Omit<HeadMeaning, "currencies"> {
  const net = NET.test(bare);
  const basis = basisInHead(bare);
  const marks = { ...(net && { net }), ...(RETAIL.test(bare) && !net && { retail: true }) };
  const held = { ...(basis && { basis }), ...marks };
  if (WITH_TAX.test(bare)) return { key: "withTax", ...held };
  if (GROSS.test(bare) && !net)
    return { key: "listPrice", ...(!EX_TAX.test(bare) && !LIST.test(bare) && { gross: true }), ...held };
  if ((LIST.test(bare) && !net) || marks.retail) return { key: "listPrice", ...held };
  if (basis && (basis.quantity > 1 || basis.unit === undefined)) return { key: "perUnit", ...held };
  if (PER_PACK.test(bare) || basis?.unit === "pack" || basis?.unit === "reel")
    return { key: "perPack", ...marks };
  return { key: PER_UNIT.test(bare) || basis ? "perUnit" : "price", ...held };
}

/** They name whatever unit the line names. */
const ANY_UNIT = /^(?:units?|unites?|einheit|eh|me|unidad|ud|eenheid|u|each|ea|item)(?![a-z])/;

/** "price per 100 m", "Preis/100 St", "prix les 100", "% m". */
export function basisInHead(bare: string): Basis | undefined {
  const found =
    /(?:\/|(?<![a-z])(?:per|pro|je|par|por|les|le|la|au|aux|for|fur|voor|a)(?![a-z])) ?(.+)$/.exec(bare) ??
    /(?<![\d.,])((?:10{2,4}) ?[a-z.']*)\)?$/.exec(bare) ??
    /(%\s?(?:m|st|stk|pcs?|ft))$/.exec(bare);
  if (!found) return undefined;
  const words = found[1]!.replace(/^(?:price|preis) /, "").trim();
  if (ANY_UNIT.test(words)) return undefined;
  // Behind what it is for, words such as "net" may stand.
  for (let cut = words; cut !== ""; cut = cut.includes(" ") ? cut.replace(/ [^ ]*$/, "") : "") {
    const basis = basisOf(cut);
    if (basis) return basis;
  }
  return saleUnit(words) && { quantity: 1, unit: saleUnit(words)! };
}
