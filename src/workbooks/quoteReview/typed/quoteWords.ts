/**
 * The words of a quote: heads of its columns and labels of its figures, in English, German, French, Spanish and
 * Dutch (from memory). They are held against plain words: small letters, no accents.
 */
import { plainWords } from "../../prices/plainWords";
import type { NumberKey, TextKey } from "./typedQuote";

export type Role = "position" | "part" | "quantity" | "unit" | "each" | "per" | "discount" | "sum" | "other";

const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`);

/** The order counts: "unit price" is no unit, "total price" no price of one. */
const HEADS: readonly (readonly [role: Role, head: RegExp])[] = [
  [
    "position",
    whole(
      "#|no|nr|n|pos|pos ?nr|pos ?no|position|item ?(?:no|nr|number)|line|line ?no|lfd ?nr|ligne|regel|linea|numero|num|ref|code|art(?:ikel)? ?nr|article ?no|sku",
    ),
  ],
  ["per", whole("pe|per|price unit|preiseinheit|preis ?einh|par|por|je|pro|prijs ?eenheid|unidad de precio")],
  [
    "discount",
    whole("(?:discount|disc|rabatt|remise|rem|dto|dcto|descuento|korting)(?: ?(?:%|rate|pct|in %))?"),
  ],
  [
    "other",
    whole(
      "(?:vat|tax|mwst|ust|tva|iva|btw|gst)(?: ?(?:%|rate|code|satz|pct))?|notes?|remarks?|comments?|bemerkung(?:en)?|remarques?|observaciones|opmerking(?:en)?|date|datum|floor|section|etage|room|supplier|currency|wahrung|devise|moneda|valuta",
    ),
  ],
  [
    "each",
    whole(
      "(?:unit|each|single|net unit|item) ?(?:price|cost|rate|net)s?|(?:price|cost|rate) ?(?:each|per (?:unit|piece|pc|item|one)|a piece|unit|ea|/ ?\\w+)|rate|each|ea|@|e ?-?preis|einzelpreis|einheitspreis|einzel|stuck ?preis|ep|preis(?: ?(?:je|pro|/) ?\\w+)?|prix (?:unitaire|unit|u|/ ?\\w+)(?: ?ht)?|p ?u(?: ?ht)?|prix|precio (?:unitario|unit|ud|u|/ ?\\w+)|p ?unit|precio|unitario|stuk ?s?prijs|eenheids ?prijs|prijs(?: ?(?:per|/) ?\\w+)?|per stuk|price|cost|a",
    ),
  ],
  [
    "sum",
    whole(
      "(?:line |net |ext(?:ended)? |total |sum )?(?:amount|total|sum|value|net)s?(?: ?(?:price|cost|net|ex vat|excl vat))?|ext(?:ended|ension)?(?: price)?|line (?:price|cost)|gesamt(?:preis|betrag|summe)?|gp|g ?-?preis|betrag|summe|wert|netto(?:betrag|preis)?|montant(?: ?ht)?|total ?ht|prix total(?: ?ht)?|p ?t(?: ?ht)?|importe(?: total)?|precio total|totaal(?:prijs|bedrag)?|bedrag",
    ),
  ],
  [
    "quantity",
    whole(
      "qty|quant(?:ity)?|qnty|count|how many|number(?: of)?|no off|pcs|pieces|menge|anzahl|anz|stuck(?:zahl)?|stk|qte|qtes|quantites?|nombre|nb|cantidad|cant|uds|unidades|aantal|hoeveelheid|st|m",
    ),
  ],
  ["unit", whole("units?|u|uom|u/?m|einheit(?:en)?|einh|me|eh|unites?|unidad|ud|eenheid|eh")],
  [
    "part",
    whole(
      "descriptions?(?: of (?:work|goods|item))?|desc|details?|items?|part(?:s| name)?|articles?|artikel|products?|produkt|material|goods|what|bezeichnung|beschreibung|leistung|text|designations?|libelle|description|descripcion|concepto|articulo|omschrijving|benaming|product|denominacion|scope|work|name",
    ),
  ],
];
const LONGEST_HEAD = 40;

/** @returns undefined for what is no head of a quote */
export function roleOf(head: string): Role | undefined {
  if (head.length > LONGEST_HEAD) return undefined;
  const plain = labelWords(head.replace(/\([^)]*\)|\[[^\]]*\]|[€$£]|\b(?:EUR|GBP|USD|CHF|in)\b/g, " "));
  return plain === "" ? undefined : HEADS.find(([, pattern]) => pattern.test(plain))?.[0];
}

/** Plain words without the marks of direction and ligatures that come along. */
export const wordsOf = (text: string): string =>
  plainWords(text.replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "").replace(/œ/gi, "oe"));

/** Without the signs that stand around a label. */
export const labelWords = (text: string): string =>
  wordsOf(text.replace(/[:=.…*;,_|()[\]°#>–—-]+/g, " "))
    .replace(/['’]/g, " ")
    .replace(/\s+/g, " ")
    .trim();

const TAX =
  "vat|v a t|value added tax|sales tax|tax|taxes|gst|mwst|mw st|ust|u st|umsatzsteuer|mehrwertsteuer|steuer|tva|t v a|iva|i v a|igic|btw|b t w|moms";
const INCL = `(?:incl?(?:uding|uded|usive|l)?|inc|with|inkl(?:usive)?|mit|incluido|incluida|con|inclusief|avec|toutes)(?: of)?(?: all)?(?: \\d+)?(?: %)? (?:${TAX})`;
const EXCL = `(?:ex(?:cl?(?:uding|usive|l)?)?|before|without|less|net of|exkl(?:usive)?|ohne|vor|zzgl|hors|sin|exclusief|zonder)(?: of)?(?: \\d+)?(?: %)? (?:${TAX})`;
const SUMS =
  "total|totals|sum|amount|gesamt|gesamt(?:summe|betrag|preis)|summe|betrag|montant|prix|importe|totaal|bedrag|totale|subtotal|sub total|zwischensumme|sous total|subtotaal|price|preis|precio|prijs|value";

export type LabelKey = NumberKey | TextKey | "subtotal" | "taxes" | "rounding" | "until" | "date" | "noise";

/** The order counts. */
const LABELS: readonly (readonly [key: LabelKey, label: RegExp])[] = [
  [
    "noise",
    whole(
      "(?:page|seite|pagina|p|blatt|feuille|hoja|blad)(?: (?:of|von|de|sur|van|/))?(?: \\d+)?|(?:amount |total )?(?:carried|brought) (?:forward|over|down)(?: .*)?|carry forward|c/?f|b/?f|ubertrag(?: .*)?|a reporter|report(?: .*)?|suma (?:y sigue|anterior)|transport(?:e|eren)?|over te brengen|(?:per )?transport|e ?& ?oe|continued(?: .*)?",
    ),
  ],
  [
    "total",
    whole(
      `(?:(?:${SUMS})) ${INCL}|${INCL}|(?:grand|overall|over all|gross|final|quote|quotation|invoice|project|contract|job) (?:total|sum|price|amount|value)(?: (?:${INCL}|payable|due))?|total (?:price|cost|sum|amount|due|payable|to pay|payable amount|gross|quoted|for the job|quote|project|inclusive)(?: .{0,4})?|(?:amount|balance|sum) (?:due|payable|to pay)|to pay|you pay|gross(?: .{0,8})?|(?:end|brutto|rechnungs|angebots)(?:summe|betrag|preis)|(?:gesamt|summe|gesamtsumme|gesamtbetrag|gesamtpreis|total|betrag) brutto|brutto|bruttosumme gesamt|zu zahlen(?:der betrag)?|(?:total|montant|prix|sous total)(?: general)? (?:ttc|t t c)|ttc|net a payer|total (?:a pagar|general|factura|presupuesto|final)|importe (?:total|a pagar)|te betalen|(?:eind|bruto) ?(?:totaal|bedrag)|(?:totaal|bruto)(?:bedrag|prijs)? (?:incl|inclusief)|totaal te betalen|bruto`,
    ),
  ],
  [
    "net",
    whole(
      `(?:(?:${SUMS})) ${EXCL}|${EXCL}|net|nett|net (?:total|sum|amount|price|value|quote)|(?:total|sub ?total|sum|price|amount) (?:net|nett|before tax|without tax|ex tax)|price without tax|nettosumme|waren(?:wert|summe)(?: netto)?|netto(?:betrag|summe|preis|gesamt)?|(?:gesamt|summe|gesamtsumme|gesamtbetrag|gesamtpreis|zwischensumme|total|betrag) netto|(?:total|montant|prix|sous total)(?: (?:general|net))? (?:ht|h t)|ht|base imponible|(?:total|importe) (?:neto|sin impuestos)|neto|(?:totaal|netto)(?:bedrag|prijs)? (?:excl|exclusief|netto)|netto ?totaal|(?:totaal|bedrag) netto|net ht`,
    ),
  ],
  [
    "taxes",
    whole(
      `(?:${TAX}) (?:in all|total|together|altogether|gesamt|totale?|totaal)|(?:total|sum of|summe|totaal|all)(?: of)?(?: the)? (?:${TAX})`,
    ),
  ],
  [
    "rounding",
    whole("round(?:ing|ed)(?: .{0,20})?|rundung(?:sdifferenz)?|gerundet|arrondi|redondeo|afronding"),
  ],
  ["taxed", whole("taxable (?:part|amount|sum|value)|tax base|steuerpflichtig(?:er betrag)?")],
  [
    "tax",
    whole(
      `(?:(?:total |price |sum |prices )?(?:includes?|contains?|including|incl) |plus |add |and |\\+ ?|zzgl |zuzuglich |mas |dont |of which |davon |darin |waarvan |waarin |plus )?(?:${TAX})(?: (?:at|on|of|a|de|auf|sur|sobre|op|over|%|sum|amount|rate|standard|reduced|hoog|laag|al|au|taux|betrag|due|only|materials?|goods|parts|work|labour|included|inside|contained|enthalten|inclus|from|von|uber|zu|x|base|intermediaire|normal|reduit|ermassigt|general|reducido|\\d+))*`,
    ),
  ],
  [
    "margin",
    whole(
      "(?:profit )?margin(?: on .*| %| of .*)?|profit(?: margin)?|mark ?up(?: .*)?|marge(?: benef\\w*)?|gewinn(?:marge)?|gewinnaufschlag|handelsspanne|spanne|margen|beneficio|winst(?:marge)?|wagnis und gewinn",
    ),
  ],
  [
    "overhead",
    whole("overheads?(?: .*)?|gemeinkosten|frais generaux|gastos generales|algemene kosten|overheadkosten"),
  ],
  [
    "contingency",
    whole(
      "wagnis|contingenc(?:y|ies)(?: .*)?|risk|unvorhergesehenes|sicherheitszuschlag|imprevus|aleas|imprevistos|onvoorzien(?:e kosten)?",
    ),
  ],
  [
    "price",
    whole(
      "(?:selling|sales?|sell) price|price of the job|verkaufspreis|angebotspreis|prix de vente|precio de venta|verkoopprijs",
    ),
  ],
  [
    "extras",
    whole(
      "provisional sums?(?: and options?)?|prov sums?|options(?: total)?|provisorische summen?|provisions?",
    ),
  ],
  [
    "materials",
    whole(
      "(?:total |sum of |cost of |all )?materials?(?: total| cost| costs| sum| in all| sub ?total)?|(?:total )?(?:parts|equipment|goods)(?: total| cost)|material(?:kosten|summe| gesamt)|materialien(?: gesamt)?|(?:total )?(?:fournitures|materiel)|(?:total )?material(?:es)?|coste de materiales|materia(?:al|len)(?:kosten)?|totaal materia(?:al|len)",
    ),
  ],
  [
    "hours",
    whole(
      "(?:crew |labour |labor |man |working |work |total |site |person )?(?:hours|hrs)(?: in all| total| of .*| on site)?|man ?hours|(?:arbeits|montage|gesamt|mann)?stunden(?: gesamt)?|heures(?: de .*| d .*)?|(?:total )?horas(?: de .*)?|(?:arbeids|werk|montage|man)?uren(?: totaal)?",
    ),
  ],
  [
    "rate",
    whole(
      "(?:hourly|labour|labor|crew|hour|our)? ?rate(?: per hour| an hour| of .*| h)?|stunden ?(?:satz|lohn|verrechnungssatz)|taux horaire|(?:tarif|prix) (?:horaire|de l heure)|(?:precio|tarifa|coste)(?: de la)? hora|tarifa horaria|uur ?(?:tarief|loon)",
    ),
  ],
  [
    "labour",
    whole(
      "(?:total |sum of |cost of )?(?:labour|labor|workmanship|man ?power|crew)(?: .{0,24})?|install(?:ation|ing)(?: (?:work|labour|time|crew|and .*))?|fitting (?:work|time|labour)|(?:arbeits|montage)(?:zeit|kosten|leistung|lohn)?|arbeit|lohn(?:kosten|arbeit)?|montage(?: .{0,20})?|main d ?(?:oeuvre|œuvre)(?: .{0,20})?|pose|mano de obra(?: .{0,20})?|montaje|instalacion|arbeid(?:skosten|sloon)?|loon(?:kosten)?|werkuren",
    ),
  ],
  [
    "cost",
    whole(
      "(?:total |prime |net |own |our |direct )?costs?(?: price| total| in all| to us)?|selbstkosten(?: gesamt)?|(?:herstell)?kosten(?: gesamt)?|(?:prix|cout)s? (?:de revient|total)|cout|coste(?: total)?|kost(?:prijs|en)(?: totaal)?",
    ),
  ],
  [
    "outlets",
    whole(
      "(?:(?:number|no|count) of |total )?(?:outlets?|tv points?|sockets?|aerial sockets?|points)(?: in all| total)?|(?:anzahl )?(?:antennen ?)?(?:dosen|steckdosen|anschlusse)|(?:nombre de )?prises(?: (?:tv|murales))?|(?:numero de )?tomas(?: de .{0,12})?|(?:aantal )?(?:uitgangen|contactdozen|aansluit(?:ingen|punten|dozen)|dozen|wandcontactdozen)",
    ),
  ],
  [
    "tuners",
    whole(
      "(?:(?:number|no|count) of |total )?(?:tuners?|receiver tuners?)(?: in all| total| to be served| served)?|(?:anzahl )?(?:tuner|empfanger)|(?:nombre de )?(?:tuners?|recepteurs|demodulateurs)|(?:numero de )?(?:sintonizadores|receptores)|(?:aantal )?(?:tuners|ontvangers)",
    ),
  ],
  [
    "bands",
    whole(
      "user bands?(?: (?:of|per|in|on|each|for)(?: (?:a|the|each))?(?: head ?units?)?)?|bands? (?:per|of (?:a|each)|each) ?(?:head ?unit)?|(?:teilnehmer|benutzer|user) ?(?:bander|frequenzen|bands)(?: (?:je|pro) .*)?|bandes utilisateur(?: par .*)?|bandas de usuario(?: por .*)?|gebruikersbanden(?: per .*)?",
    ),
  ],
  [
    "heads",
    whole(
      "(?:(?:number|no|count) of |total )?head ?units?(?: in all| total)?|(?:anzahl )?(?:kopf(?:einheit(?:en)?|stellen?|stationen?))|(?:nombre de )?(?:tetes? de (?:reception|reseau|station)|unites? de tete)|(?:numero de )?(?:cabeceras?|unidades? de cabecera)|(?:aantal )?(?:kop(?:eenhe(?:id|den)|units?|stations?)|hoofdeenhe(?:id|den))",
    ),
  ],
  [
    "cable",
    whole(
      "(?:total |all )?(?:coax(?:ial)? )?cable(?: in all| total| length| run| runs| quantity| metres)?|length of cable|kabel(?: gesamt|lange| insgesamt|meter)?|(?:koaxial|koax)kabel gesamt|(?:longueur de )?cable(?: total)?|(?:longitud de )?cable(?: total| en total)?|(?:totale )?kabel(?:lengte| totaal)?",
    ),
  ],
  [
    "subtotal",
    whole(
      "(?:sub ?totals?|zwischen(?:summe|total)|sous totale?|subtotaal|tussentotaal)(?: .*)?|(?:total|sum|summe|somme|suma|totaal|gesamt)(?: (?:of|for|fur|de|du|voor|der|des|la|le))? .{1,40}",
    ),
  ],
  [
    "total",
    whole(
      "totals?|sum|summe|gesamt|gesamt(?:summe|betrag|preis)|totaal|totale|somme|suma|total general|montant total|totaal ?(?:bedrag|prijs)|sum total",
    ),
  ],
  [
    "until",
    whole(
      "(?:(?:quote|offer|quotation|prices?|this (?:quote|offer)|angebot|preise|devis|offre|oferta|presupuesto|offerte)(?: is| are| ist| est| es)? )?(?:valid(?:ity|ite|ez|a|o|e)?(?: (?:until|till|to|through|thru|up to|jusqu au|jusqu|hasta|hasta el))?|good until|holds? until|open until|expir(?:es|y)(?: on| date)?|gultig(?:keit)?(?: bis(?: zum)?)?|gilt bis(?: zum)?|valable(?: jusqu ?(?:au|a|en)?(?: le)?)?|geldig(?:heid)?(?: tot(?: en met)?| t/m)?|bindefrist(?: bis)?|vigente hasta)",
    ),
  ],
  [
    "quote",
    whole(
      "(?:our )?(?:quote|quotation|offer|estimate|tender|proposal|angebot|angebots|devis|offre|presupuesto|oferta|offerte)(?: ?(?:no|nr|number|nummer|num|numero|n|ref|reference|id|and revision))?|our ref(?:erence)?|ref(?:erence)?|q(?:uote)? ?(?:no|nr|ref)|angebotsnummer|offertenummer|revision",
    ),
  ],
  [
    "job",
    whole(
      "job(?: name)?|project(?: name)?|site|works?|customer|client|for|to|re|subject|objekt|projekt|bauvorhaben|bv|kunde|auftraggeber|betreff|betrifft|chantier|projet|objet|pour|obra|proyecto|cliente|asunto|para|klant|betreft|werk|object|opdrachtgever|voor",
    ),
  ],
  [
    "by",
    whole(
      "(?:made|prepared|quoted|written|typed|drawn up|estimated|compiled|offered) by|by|from|estimator|company|contractor|erstellt von|bearbeiter(?:in)?|sachbearbeiter(?:in)?|von|etabli par|redige par|de|preparado por|elaborado por|realizado por|opgesteld door|gemaakt door|door|vom|contact|supplier",
    ),
  ],
  [
    "date",
    whole("(?:quote |offer )?date(?:d)?(?: of .*)?|datum|angebotsdatum|du|fecha|le|printed|issued(?: on)?"),
  ],
];
const LONGEST_LABEL = 60;

/** @param text a label without its figures */
export function labelOf(text: string): LabelKey | undefined {
  if (text.length > LONGEST_LABEL) return undefined;
  const plain = labelWords(text.replace(/%/g, " % "))
    .replace(/^%\s*|\s*%$/g, "")
    .trim();
  return plain === "" ? undefined : LABELS.find(([, pattern]) => pattern.test(plain))?.[0];
}

const word = (pattern: string): RegExp => new RegExp(`(?<![a-z])(?:${pattern})(?![a-z])`);

export const IS_DISCOUNT = word(
  "discount|rebate|rabatt|nachlass|skonto|remise|rabais|ristourne|descuento|dto|korting|less|deduction|abzug",
);
/** No other word: "5 % discount within ten days" are terms, and so is what is only granted for paying early. */
export const isOnlyDiscount = (label: string): boolean => {
  const words = wordsOf(label).trim();
  return IS_DISCOUNT.test(words) && !/\s/.test(words) && words !== "skonto";
};
export const IS_OPTIONAL = word(
  "options?|optional(?:ly|es|e)?|not included|not in (?:the )?total|optionnel(?:le)?s?|en option|opcional(?:es)?|opciones|optioneel|opties|alternativ(?:e|position)?|alternative|bedarfsposition|eventual(?:position)?|nicht enthalten|non compris|no incluido|niet inbegrepen|if wanted|extra cost options",
);
export const IS_INCLUDED = word(
  "included|incl|inclusive|by others|nil|n ?/ ?c|no charge|free(?: of charge)?|bauseits|inklusive|inbegriffen|kostenlos|ohne berechnung|inclus|offert|gratuit|incluido|sin cargo|gratis|inbegrepen|door derden|par d autres",
);
export const IS_LABOUR = word(
  "labou?r|install(?:ation|ing)|fitting|crew|workmanship|man ?hours?|work|fitters?|engineers?|technicians?|commissioning|testing|arbeits?\\w*|montage\\w*|monteur\\w*|lohn\\w*|inbetriebnahme|einmess\\w*|main d ?oeuvre|pose|mise en service|technicien|mano de obra|montaje|instalacion|puesta en marcha|tecnico|arbeid\\w*|loon|inbedrijfstelling|monteurs?",
);
export const IS_HEAD_UNIT = word(
  "head ?-?units?|head ?-?ends?|kopf(?:einheit(?:en)?|stellen?|stationen?)|tetes? de (?:reception|reseau|station)|unites? de tete|cabeceras?|unidades? de cabecera|kop(?:eenhe(?:id|den)|units?|stations?)|hoofdeenhe(?:id|den)",
);
export const IS_CABLE = word("cables?|coax\\w*|\\w*kabel|\\w*leitung|kabels");
export const IS_OUTLET = word(
  "outlets?|wall ?plates?|tv sockets?|aerial sockets?|antennen(?:steck)?dosen?|prises?(?: (?:tv|murales?))?|tomas?|contactdozen|wandcontactdozen|aansluitdozen|antennedozen",
);
/** What a cable's line is not: what goes with one. */
export const IS_BESIDE_CABLE = word(
  "ties?|clips?|clamps?|trunking|ducts?|glands?|connectors?|plugs?|markers?|labels?|stripper|kanal|schellen?|binder|stecker|colliers?|attaches|bridas?|conectores|canaleta|goot|binders|\\w*kabelbinder|tray|trays",
);
export const HOUR_UNIT = /^(?:h|hrs?|hours?|std|stunden?|heures?|horas?|uur|uren)\.?$/;
export const METRE_UNIT = /^(?:m|mtrs?|metres?|meters?|lfm|ml|lfdm|metros?|ft|feet|foot|lm|rm)\.?$/;
export const UNIT =
  /^(?:m|mtrs?|metres?|meters?|lfm|ml|metros?|ft|feet|foot|pcs?|pieces?|ea|each|no|nos|off|reels?|rolls?|drums?|boxe?s?|bags?|packs?|pkts?|pairs?|sets?|lots?|ls|sum|item|units?|h|hrs?|hours?|days?|std|stunden?|tage?|stk|stck|st|stuck|psch|pauschal|rolle|rollen|ring|trommel|pack|paar|satz|vpe|u|un|unites?|pces?|rouleaux?|tourets?|bobines?|heures?|jours?|ens|forfait|ff|lots?|uds?|ud|unidad(?:es)?|piezas?|rollos?|bobinas?|horas?|dias?|pa|stuks?|rol|rollen|haspels?|uur|uren|dagen|%)\.?$/;
