import { signal } from '@lit-labs/signals'
import { browserSetting, rememberSetting } from '../../storage/store/browser-setting.ts'
import { isTouch } from './is-touch.ts'

const KEY = 'evenfield-signs'

const stored = browserSetting(KEY)

/** Whether a line with signs is shown while one types; by default only on touch screens. */
export const signsShown = signal(stored === undefined ? isTouch : stored === 'yes')

/** Shows or hides that line, and remembers the choice. */
export function showSigns(show: boolean): void {
  signsShown.set(show)
  rememberSetting(KEY, show ? 'yes' : 'no')
}

/** Whether the full keyboard is asked for, where figures otherwise get the keys for numbers. */
export const fullKeyboard = signal(false)
