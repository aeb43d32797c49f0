/** How many times larger than its view box a drawing is shown in the sheet: its text is 13 px high. */
export const ZOOM = 1
