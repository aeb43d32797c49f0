import { plural } from '../../units/plural.ts'

/** Why a picture cannot be decoded, and what to do: each is put after the name of its file. */

export const oldLzw = 'its LZW is of the kind before TIFF 6.0, which cannot be read'
export const lzwCode = 'its LZW data use a code that is not defined'
export const impossibleSize = (format: string | number, width: string | number, height: string | number): string =>
  `the ${format} says it is ${width} × ${height} pixels; export it again`
export const tooManyPixels = (width: string | number, height: string | number): string =>
  `the picture is ${width} × ${height} pixels, more than can be measured at once; export a part of it`
export const tooFewData = (format: string | number, width: string | number, height: string | number): string =>
  `the ${format} says it is ${width} × ${height} pixels, but has far too few data for that; it is cut short or damaged: copy or export it again`
export const dataEnd = 'its data end'
export const cutShort = (format: string | number, what: string | number): string =>
  `the ${format} is cut short: ${what} before the picture is complete; copy or export it again`
export const damaged = (format: string | number, what: string | number): string =>
  `the ${format} is damaged: ${what}; copy or export it again`
export const unknownFilter = (row: number, filter: number): string =>
  `row ${row} names the filter ${filter}, which does not exist`
export const bigTiff = 'this is a BigTIFF, which cannot be read; export it as a plain TIFF'
export const maybeRaw = 'this looks like a camera’s raw file, which cannot be read; develop it and export a 16-bit TIFF'
export const blockEnds = (block: 'tile' | 'strip', number: number): string => `its ${block} ${number} ends`
export const method = (code: number): string => `method ${code}`
export const fieldEnds = (tag: string | number): string => `its field ${tag} ends`
export const fieldNotWhole = (tag: string | number): string => `its field ${tag} is not of whole numbers`
export const layeredDocument = 'a layered document of an image editor'
export const flatTiff = 'a flat TIFF'
export const pdf = 'this is a PDF; export the picture in it as TIFF'
export const heic =
  'this is a HEIC picture, which cannot be read; export it as JPEG or TIFF, or set the phone to take JPEG'
export const exportAs = (what: string | number, as: string | number): string =>
  `this is ${what}, which cannot be read; export it as ${as}`
export const pngOrTiff = 'PNG or TIFF'
export const pictureKind = (format: string): string => `a picture in the format ${format}`
export const emptyFile = 'the file is empty; copy or export it again'
export const notAPicture = 'this is not a picture that can be measured; choose a JPEG, PNG or TIFF'
export const notDecoded = (why: string | number): string => `its data cannot be decoded${why}`
export const noMarker = (at: string | number): string => `there is no marker at byte ${at}`
export const noLength = (at: string | number): string => `the segment at byte ${at} has no length`
export const severalFrames = 'the JPEG holds its picture in several frames, which cannot be read; export it again'
export const dataBeforeSize = 'its picture data come before its size'
export const noPictureData = 'it holds no picture data'
export const kindOfJpeg = (what: string | number): string =>
  `this is a ${what} JPEG, which cannot be read; export a baseline or progressive one, or a TIFF`
export const shortHeader = 'its frame header is too short'
export const jpegBits = (bits: number | undefined): string =>
  `the JPEG has ${bits} bits per sample, which cannot be read; export it with 8 bits, or a TIFF`
export const jpegCmyk = 'the JPEG is in CMYK, which says what to print, not what was there; export it as RGB'
export const components = (count: string | number): string => `it says it has ${count} components`
export const componentSampling = (component: number, h: number, v: number): string =>
  `its component ${component} has the sampling ${h} × ${v}`
export const sameComponents = 'two of its components have the same number'
export const profileParts = 'parts of its colour profile are missing'
export const raw = 'this is a camera’s raw file, which cannot be read; develop it and export a 16-bit TIFF'
export const faxCode = 'a fax code'
export const samplesPerPixel = (samples: number, channels: 1 | 3): string =>
  `it says a pixel has ${plural(samples, 'sample')}, where ${channels === 3 ? 'red, green and blue are 3' : 'grey is 1'}`
export const compression = (name: string | number): string =>
  `the TIFF is compressed with ${name}, which cannot be read; export it uncompressed, with LZW or with ZIP (deflate)`
export const predictor = (predictor: string | number): string =>
  `the TIFF is compressed with predictor ${predictor}, which cannot be read; export it without one`
export const reverseBits = 'the TIFF has its bits in reverse order, which cannot be read; export it again'
export const inks = (inks: number): string =>
  `the TIFF is in ${inks === 1 ? 'CMYK' : 'ink separations'}, which say what to print, not what was there; export it as RGB`
const LAB = 'in Lab'
const COLOURS: Readonly<Record<number, string>> = { 4: 'a mask', 6: 'in YCbCr', 8: LAB, 9: LAB, 10: LAB }
/** Of the photometric interpretations of TIFF 6.0, those that cannot be read. */
export const colours = (photometric: number): string =>
  `the TIFF is ${COLOURS[photometric] ?? 'in colours of an unknown kind'}, which cannot be read; export it as grey or RGB`
export const floats = 'the TIFF holds floating-point samples, which cannot be read; export it with 8 or 16 bits'
export const signed = 'the TIFF holds samples with a sign, which cannot be read; export it with 8 or 16 bits'
export const tiffBits = (bits: string): string =>
  `the TIFF has ${bits} bits per sample, which cannot be read; export it with 8 or 16 bits`
export const paletteSize = 'its palette does not fit its samples'
export const parts = (
  width: string | number,
  height: string | number,
  blockWidth: string | number,
  blockHeight: string | number,
): string => `it says it is ${width} × ${height} pixels in parts of ${blockWidth} × ${blockHeight}`
export const blockCount = (blocks: number, kind: string, width: number, height: number, listed: number): string =>
  `it needs ${blocks} ${kind} for its ${width} × ${height} pixels and lists ${listed}`
export const extraChannels = 'the picture has an alpha channel or other extra ones, which are ignored'
export const notInflated = (why: string | number): string => `its data cannot be inflated (${why})`
export const chunkSum = (type: string | number, at: string | number): string =>
  `the checksum of its ${type} chunk at byte ${at} is wrong`
export const headerFirst = 'it does not start with its header'
export const headerMissing = 'its header is missing'
export const packedOtherwise = 'the PNG is compressed in a way that the format does not allow; export it again'
export const profilePacked = 'its colour profile cannot be decompressed'
export const gamma = (gamma: string | number): string =>
  `the gAMA chunk of the PNG is ${gamma}, which no encoding has; export it with a colour profile`
export const colourType = (depth: string | number, colourType: string | number): string =>
  `the PNG says it has ${depth} bits of colour type ${colourType}, which no PNG has; export it again`
export const alphaIgnored = 'the picture has an alpha channel, which is ignored'
export const transparentColours = 'the picture has transparent colours, which are measured as if opaque'
export const paletteMissing = 'its palette is missing'
export const paletteEntry = 'a pixel has a colour that is not in the palette'
