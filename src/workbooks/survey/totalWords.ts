/** Words by which a line is a sum of those above it, in several languages (from memory). */
export const TOTAL =
  /^(?:=|∑|Σ)? ?(?:(?:grand|sub|over-?all|running)[ -]?)?(?:totals?|totale|totaal|tot)\b|^(?:sub|sum(?:ma)?|summe|zwischensumme|gesamt(?:summe)?|insgesamt|somme|sous-total|suma|subtotal|übertrag|report|altogether|all together|all in all|in all|carried forward|brought forward|carry over|c\/f|b\/f|total général|zusammen|en tout)\b\.?|^[∑Σ]|\b(?:total|subtotal|in total|altogether|insgesamt)\s*[:=]?$/i;
