/** What comes before anything this app says, on its screens and on every sheet it prints. */
export const CAUTIONS = [
  'The operator’s manual of your machine comes first, then local rules, then licensed practice. Whatever is said here comes after all three.',
  'A baler maims. Nothing here makes it safe to reach in. Lock the machine out yourself before every hands-on step.',
  'Typical values and probabilities are expert estimates or from memory. Check the operator’s manual of your machine.',
] as const;
