/** Why something cannot be renamed, and what to do. */

export const areaNotAName = (name: string): string =>
  `“${name}” cannot be the name of an area: a name is a letter, then letters, digits and underscores.`
export const areaIsReserved = (name: string): string =>
  `“${name}” is a figure of every frame. Choose another name for the area.`
export const areaNameTaken = (name: string): string => `Another area is already named “${name}”.`
export const areaGone = 'This area is no longer in the sheet.'
export const columnIsUsed = (table: string, from: string, to: string): string =>
  `A formula in “${table}” uses “${from}”, and a column there is already named “${to}”. Choose another name, or rename the column first.`
export const columnGone = 'This column is no longer in the sheet.'
export const columnHidesCell = (table: string, name: string): string =>
  `A formula over the rows of “${table}” uses “${name}” of the sheet; a column of that name would be used instead. Choose another name.`
