/** Words by which a heading names a floor or a part of a building, in several languages (from memory). */
const FLOOR =
  /\b(?:floor|flr|storey|story|level|basement|cellar|attic|annexe?|loft|mezzanine|geschoss|obergeschoss|erdgeschoss|untergeschoss|dachgeschoss|kellergeschoss|stockwerk|stock|etage|rez-de-chaussée|sous-sol|piano|piso|planta|sótano|våning|verdieping|begane grond|wing|block|building|haus|deck|ward)\b|étage|geschoß|^(?:[EUDK]G|\d+\. ?(?:OG|UG|DG|Stock|floor)|OG ?\d*|G\/?F|LG|UG|B\d|\d{1,2}\/?F|L\d{1,2}|RDC|RC|R\+\d+|ground|upstairs|downstairs|first|second|third|fourth|fifth|\d{1,2}(?:st|nd|rd|th)|\d{1,2}\. ?OG)\b/i;

/** A heading is short; what is longer is a remark. */
const LONGEST_HEADING = 32;

export const isFloorHeading = (text: string): boolean => text.length <= LONGEST_HEADING && FLOOR.test(text);
