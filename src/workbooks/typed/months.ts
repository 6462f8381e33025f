/**
 * The months in the languages of the writings that a document may choose (Unicode CLDR 48), and their short forms.
 * Three letters and more of a name are its short form where they begin no other month's name; `mar` begins
 * marraskuu, too, which nobody shortens so.
 */
const MONTHS: readonly (readonly string[])[] = [
  "january januar janvier gennaio enero janeiro januari jänner leden ledna tammikuu tammikuuta január januára styczeń stycznia",
  "february februar février fevrier febbraio febrero fevereiro februari feber únor února helmikuu helmikuuta február februára luty lutego",
  "march märz maerz mrz mars marzo março marco maart mrt marts březen března maaliskuu maaliskuuta március marec marca marzec mar",
  "april avril aprile abril duben dubna huhtikuu huhtikuuta április apríl apríla kwiecień kwietnia",
  "may mai maggio mayo maio mei maj květen května toukokuu toukokuuta május máj mája maja",
  "june juni juin giugno junio junho červen června kesäkuu kesäkuuta június jún júna czerwiec czerwca",
  "july juli juillet luglio julio julho červenec července heinäkuu heinäkuuta július júl júla lipiec lipca",
  "august août aout agosto augustus augusti srpen srpna elokuu elokuuta augusztus augusta sierpień sierpnia",
  "september septembre settembre septiembre setembro září syyskuu syyskuuta szeptember septembra wrzesień września",
  "october oktober octobre ottobre octubre outubro říjen října lokakuu lokakuuta október októbra październik października",
  "november novembre noviembre novembro listopad listopadu marraskuu marraskuuta novembra listopada",
  "december dezember décembre decembre dicembre diciembre dezembro desember prosinec prosince joulukuu joulukuuta decembra grudzień grudnia",
].map((names) => names.split(" "));
const SHORTEST = 3;

/** @returns 1 to 12; undefined for what is no month, or could be two */
export function monthOf(word: string): number | undefined {
  const plain = word.toLowerCase().replace(/\.$/, "");
  if (plain.length < SHORTEST) return undefined;
  const whole = MONTHS.findIndex((names) => names.includes(plain));
  if (whole >= 0) return whole + 1;
  const begun = MONTHS.flatMap((names, index) =>
    names.some((name) => name.startsWith(plain)) ? [index + 1] : [],
  );
  return begun.length === 1 ? begun[0] : undefined;
}
