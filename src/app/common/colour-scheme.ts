import { computed, signal } from '@lit-labs/signals'
import { browserSetting, rememberSetting } from '../../storage/store/browser-setting.ts'

/** The brightness of the page: light for the office, dim for the stand, where the light of a screen would reach the original. */
export type ColourScheme = 'light' | 'dim'

const KEY = 'evenfield-face'
const STAND_KEY = 'evenfield-face-at-stand'

function remembered(key: string): ColourScheme | undefined {
  const saved = browserSetting(key)
  return saved === 'light' || saved === 'dim' ? saved : undefined
}

const preferred = (): ColourScheme => (matchMedia('(prefers-color-scheme: dark)').matches ? 'dim' : 'light')

const usual = signal<ColourScheme>(remembered(KEY) ?? preferred())
/** The scheme at the stand is chosen separately, and dim by default. */
const stand = signal<ColourScheme>(remembered(STAND_KEY) ?? 'dim')
const isAtStand = signal(false)

export const colourScheme = computed((): ColourScheme => (isAtStand.get() ? stand.get() : usual.get()))

const show = (): void => {
  document.documentElement.dataset.face = colourScheme.get()
}
show()

/** Chooses the colours of the page, and remembers the choice. */
export function setColourScheme(value: ColourScheme): void {
  const atStand = isAtStand.get()
  const chosen = atStand ? stand : usual
  chosen.set(value)
  show()
  rememberSetting(atStand ? STAND_KEY : KEY, value)
}

/** Switches between the scheme of the stand and the usual one. */
export function enterStand(at: boolean): void {
  isAtStand.set(at)
  show()
}
