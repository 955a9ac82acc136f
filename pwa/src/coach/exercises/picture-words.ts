/** What is asked of whoever adds a picture. */
export const IN_WORDS = "In words, for those who do not see it";
export const LONGEST = 200;
