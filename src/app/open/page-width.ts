import { signal } from '@lit-labs/signals'

/** How much room a page has: all at once, the main things with a menu beside them, or a phone. */
export type PageWidth = 'wide' | 'medium' | 'narrow'

// Not on paper: what is laid out anew while it is printed is on fewer or more pages than were counted before.
const isNarrow = matchMedia('screen and (max-width: 40rem)')
const isMedium = matchMedia('screen and (max-width: 1179px)')

const measured = (): PageWidth => (isNarrow.matches ? 'narrow' : isMedium.matches ? 'medium' : 'wide')

export const pageWidth = signal(measured())

for (const query of [isNarrow, isMedium]) query.addEventListener('change', () => pageWidth.set(measured()))
