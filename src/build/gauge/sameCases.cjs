/** A mutant must be caught by what is asked, not by chance; and no simpler case that catches it is looked for. */
require("fast-check").configureGlobal({ seed: 20_261_128, endOnFailure: true });
