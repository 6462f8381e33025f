/** A mutant must be caught by what is asked, not by chance. */
require("fast-check").configureGlobal({ seed: 20_261_128 });
