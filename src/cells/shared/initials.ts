import { browserSetting, rememberSetting } from '../../storage/store/browser-setting.ts'

const KEY = 'evenfield-initials'
export const LONGEST_INITIALS = 12

/** The initials of who measures in this browser, saved with each measured value; empty where none are given. */
export const initials = (): string => browserSetting(KEY) ?? ''

/** Remembers the initials stored with what is measured from now on. */
export const setInitials = (text: string): void => rememberSetting(KEY, text.trim().slice(0, LONGEST_INITIALS))
