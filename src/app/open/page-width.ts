import { signal } from '@lit-labs/signals'

/** How much room a page has: all at once, the main things with a menu beside them, or a phone. */
export type PageWidth = 'wide' | 'medium' | 'narrow'

const isNarrow = matchMedia('(max-width: 40rem)')
const isMedium = matchMedia('(max-width: 1179px)')

const measured = (): PageWidth => (isNarrow.matches ? 'narrow' : isMedium.matches ? 'medium' : 'wide')

export const pageWidth = signal(measured())

for (const query of [isNarrow, isMedium]) query.addEventListener('change', () => pageWidth.set(measured()))
