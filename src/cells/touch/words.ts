/** The words of fields on a touch screen. */
export const touchWords = {
  width: (label: string): string => `${label}, width`,
  height: (label: string): string => `${label}, height`,
}
