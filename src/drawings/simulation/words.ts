/** The words of a histogram of simulated tries. */
export const HISTOGRAM_WORDS = {
  title: (label: string) => `${label}, simulated`,
  description: (tries: string, from: string, to: string, low: string, high: string) =>
    `A histogram of ${tries} tries from ${from} to ${to}; 95 % of them lie from ${low} to ${high}.`,
}
