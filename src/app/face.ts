import { signal } from '@lit-labs/signals'

/** How bright the page is: light for the office, dim for the stand, where the screen's spill would reach the original. */
export type Face = 'light' | 'dim'

const KEY = 'evenfield-face'

function remembered(): Face | undefined {
  try {
    const kept = localStorage.getItem(KEY)
    return kept === 'light' || kept === 'dim' ? kept : undefined
  } catch {
    // A browser set to keep nothing still gets a page.
    return undefined
  }
}

const preferred = (): Face => (matchMedia('(prefers-color-scheme: dark)').matches ? 'dim' : 'light')

export const face = signal<Face>(remembered() ?? preferred())

const put = (value: Face): void => {
  document.documentElement.dataset.face = value
}
put(face.get())

export function setFace(value: Face): void {
  face.set(value)
  put(value)
  try {
    localStorage.setItem(KEY, value)
  } catch {
    // It holds for this visit.
  }
}
