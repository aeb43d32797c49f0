import { plural } from '../../units/plural.ts'

/** Why an area cannot be measured, or what is doubtful about its figures, and what to do. */

export const tooFewPixels = (where: string | number, columns: string | number, rows: string | number): string =>
  `the box of ${where} is too small for ${columns} × ${rows} fields; make it larger or take fewer`
export const field = (column: number, row: number, where: string): string =>
  `the field in column ${column}, row ${row} of ${where}`
export const fieldClipped = (which: string, share: string): string =>
  `${which} is clipped (${share} of its pixels at full scale); expose less and take it again`
export const fieldBlack = (which: string | number): string =>
  `${which} is black: no ratio to it can be given; expose more, or draw the box smaller`
export const partlyBlack = (share: string): string => `up to ${share} of a field is black: no light was recorded there`
export const notAList =
  'the areas are not a list: write [{"kind": "patch", "name": …, "box": [x, y, width, height]}, …]'
export const tooMany = (count: number, most: number): string => `there are ${plural(count, 'area')}, more than ${most}`
export const sameName = (name: string): string => `two areas have the name ${name}; rename one of them`
/** How a place is called in the other sentences. */
export const areaOf = (name: string): string => `area ${name}`
export const patchOf = (name: string, where: string): string => `patch ${name} of ${where}`
export const patchNamed = (name: string): string => `patch ${name}`
export const markOf = (mark: string, where: string): string => `${mark} of ${where}`
export const corner = (number: number): string => `corner ${number}`
export const startsAt = (left: string, top: string): string => ` and starts at ${left}, ${top}`
export const notAnObject = (area: number): string => `area ${area} is not an object with a kind and a name`
export const noName = (area: number): string => `area ${area} has no name`
export const unknownKind = (where: string, kind: string | undefined, kinds: string): string =>
  `${where} has ${kind === undefined ? 'no kind' : `the kind ${kind}`}; the kinds are ${kinds}`
export const noBox = (where: string | number): string =>
  `${where} has no box; write "box": [x, y, width, height] in pixels`
export const boxOfFour = (where: string | number): string =>
  `the box of ${where} is not four numbers: x, y, width and height in pixels`
export const boxNotAboveZero = (where: string | number, w: string | number, h: string | number): string =>
  `the box of ${where} is ${w} × ${h} pixels; its width and height must be above zero`
export const notTwoNumbers = (what: string | number, where: string | number): string =>
  `${what} of ${where} is not two numbers: x and y in pixels`
export const marksTogether = (where: string | number): string =>
  `both marks of ${where} are at one place; set them apart`
export const fourCorners = (where: string, found: number): string =>
  `${where} has ${found === 0 ? 'no corners' : plural(found, 'corner')}; it takes four: top left, top right, bottom right, bottom left`
export const fieldCount = (what: string, where: string, most: number): string =>
  `the ${what} of ${where} must be a whole number from 1 to ${most}`
export const length = (where: string | number, why: string | number): string =>
  `the length of ${where}: ${why}; write it with its unit, such as "100 mm"`
export const size = (where: string | number, why: string | number): string =>
  `the size of ${where}: ${why}; write it with its unit, such as "200 x 150 mm"`
export const missing = 'it is missing'
export const notText = 'it is not a text'
export const unread = (text: string, why: string): string => `${text} cannot be read: ${why}`
export const notALength = (text: string, found: string | undefined): string =>
  `${text} is ${found === undefined ? 'a number without a unit' : `${found}, not a length`}`
export const notAboveZero = (text: string): string => `${text} is not above zero`
export const noPatches = (where: string | number): string =>
  `${where} has no patches; write "patches": [{"name": …, "box": […], "lab": [L, a, b]}, …]`
export const tooManyPatches = (where: string, count: number, most: number): string =>
  `${where} has ${plural(count, 'patch', 'patches')}, more than ${most}`
export const patchNotAnObject = (patch: number, where: string): string => `patch ${patch} of ${where} is not an object`
export const patchNoName = (patch: number, where: string): string => `patch ${patch} of ${where} has no name`
export const noReference = (which: string | number): string =>
  `${which} has no reference: write "lab": [L, a, b] for D50`
export const referenceNotLab = (
  which: string | number,
  L: string | number,
  a: string | number,
  b: string | number,
): string => `the reference of ${which} is ${L}, ${a}, ${b}, which is not an L*a*b* colour`
export const aroundOneEdge = 'draw the box around one straight edge between a dark and a bright field'
export const noEdge = (where: string, hint: string): string => `there is no edge in ${where}; ${hint}`
export const tilted = (where: string, hint: string): string =>
  `the edge of ${where} is tilted by more than 45°; ${hint}`
export const tooSquare = (where: string, moved: string, rows: number): string =>
  `the edge of ${where} is too square: it moves by ${moved} px over ${rows} rows, and needs 1; tilt it by 2° to 10°, or make the box longer`
export const noEdgeMiddle = (where: string, hint: string): string =>
  `there is no edge through the middle of ${where}; ${hint}`
export const noStraightEdge = (where: string, hint: string): string =>
  `there is no straight edge through the middle of ${where}; ${hint}`
export const repeats = (where: string | number): string =>
  `the edge of ${where} is tilted so that its rows repeat the same few places, or is too near the border of the box; tilt it by 2° to 10° and keep it in the middle`
export const severalEdges = (where: string | number): string =>
  `there is no single edge in ${where}: its sides are nearly the same where the rest is not; draw the box around one straight edge`
export const blurred = (where: string, rise: string): string =>
  `there is no sharp edge in ${where}: the light changes over ${rise} px, the whole of the box; draw it wider, or around an edge`
export const outside = (
  where: string,
  right: string,
  bottom: string,
  start: string,
  width: number,
  height: number,
): string =>
  `the box of ${where} extends beyond the picture: it ends at ${right}, ${bottom}${start}; the picture is ${width} × ${height} pixels`
export const noPixel = (where: string | number): string =>
  `the box of ${where} contains the centre of no pixel; make it larger`
export const pointOutside = (what: string, x: string, y: string, width: number, height: number): string =>
  `${what} is at ${x}, ${y}, outside the picture of ${width} × ${height} pixels`
export const clipped = (share: string, where: string): string =>
  `${share} of ${where} is clipped at full scale: its light is more than can be measured`
export const black = (share: string, where: string): string =>
  `${share} of ${where} is black: no light was recorded there`
export const marksApart = (where: string, apart: string, least: number): string =>
  `the marks of ${where} are ${apart} px apart; a line needs ${least}`
export const noLine = (where: string | number): string =>
  `no edge or line is found along the marks of ${where}; set both marks on one line that is darker or brighter than what is beside it`
export const lineInParts = 'the line is not found along its whole length'
export const thePatch = 'the patch'
export const boxTooSmall = (where: string | number, width: string | number, height: string | number): string =>
  `the box of ${where} is ${width} × ${height} pixels, too small for an edge; make it at least 20 × 20`
export const boxTooLarge = (where: string | number, width: string | number, height: string | number): string =>
  `the box of ${where} is ${width} × ${height} pixels; draw it closely around one edge`
export const sharpened = (greatest: string): string =>
  `the response rises to ${greatest}: the picture was sharpened, so this measures the software as well`
export const edgeClipped = (where: string, share: string): string =>
  `the edge of ${where} is clipped: ${share} of its box is at full scale; expose less and take it again`
export const edgeBlack = (where: string, share: string): string =>
  `the edge of ${where} is clipped: ${share} of its box is black: no light was recorded there; expose more and take it again`
export const wrongWay = 'are in the wrong order'
export const crossing = 'cross, are in one place or lie on a line'
export const corners = (name: string | number, why: string | number): string =>
  `the corners of “${name}” ${why}; give them as top left, top right, bottom right, bottom left`
