/** What is wrong in the colour profile of a picture, and what to do. */

export const exportWith =
  'export the picture with sRGB, Adobe RGB (1998), ROMM RGB or another profile of a matrix and curves'
export const profile = (what: string, exported: string): string => `the colour profile in the file ${what}; ${exported}`
export const cutShortOrNone = 'is cut short or is not a colour profile'
export const otherSpace = (space: string): string =>
  `the colour profile in the file is for ${space}, which cannot be read; export the picture as RGB`
export const otherColours = 'other colours than grey or RGB'
export const printers = 'is for a printer'
export const notForPictures = 'is not for pictures'
export const byTables = 'converts with lookup tables (LUT), which cannot be read'
export const named = (name: string): string => `profile ${name}`
export const unnamed = 'a profile without a name'
export const forGrey = 'is for grey, the picture is RGB'
export const labWithoutTable = 'converts to Lab but has no lookup table for it'
export const noWhite = 'gives no light for white'
export const forRgb = 'is for RGB, the picture is grey, and its three curves differ'
export const cutShort = 'is cut short'
export const noCurve = (tag: string | number): string => `has no curve ${tag} that can be read`
export const noPrimary = (tag: string | number): string => `has no primary ${tag}`
export const primaries = 'the primaries in the file’s cHRM chunk are not colours; it is read as sRGB'
export const uncalibrated = 'the camera marked its colours as uncalibrated, and there is no profile; it is read as sRGB'
export const ownPrimaries = (plain: string | number): string => `${plain}, the picture’s own primaries`
