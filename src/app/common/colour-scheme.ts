import { computed, signal } from '@lit-labs/signals'

/** How bright the page is: light for the office, dim for the stand, where the screen's spill would reach the original. */
export type ColourScheme = 'light' | 'dim'

const KEY = 'evenfield-face'
const STAND_KEY = 'evenfield-face-at-stand'

function remembered(key: string): ColourScheme | undefined {
  try {
    const kept = localStorage.getItem(key)
    return kept === 'light' || kept === 'dim' ? kept : undefined
  } catch {
    // A browser set to keep nothing still gets a page.
    return undefined
  }
}

const preferred = (): ColourScheme => (matchMedia('(prefers-color-scheme: dark)').matches ? 'dim' : 'light')

const usual = signal<ColourScheme>(remembered(KEY) ?? preferred())
/** At the stand it is dim unless one says otherwise there; elsewhere all stays as it was. */
const stand = signal<ColourScheme>(remembered(STAND_KEY) ?? 'dim')
const isAtStand = signal(false)

export const colourScheme = computed((): ColourScheme => (isAtStand.get() ? stand.get() : usual.get()))

const show = (): void => {
  document.documentElement.dataset.face = colourScheme.get()
}
show()

export function setColourScheme(value: ColourScheme): void {
  const atStand = isAtStand.get()
  const chosen = atStand ? stand : usual
  chosen.set(value)
  show()
  try {
    localStorage.setItem(atStand ? STAND_KEY : KEY, value)
  } catch {
    // It holds for this visit.
  }
}

/** The page turns to the face of the stand, or back. */
export function goToStand(at: boolean): void {
  isAtStand.set(at)
  show()
}
