import table from '../../../shared/reference/file-formats.json'
import { type FunctionRecord, number, record, TEXT } from '../../language/index.ts'
import { DATA, PIXEL } from '../../units/index.ts'
import { parameter } from '../maths/parameters.ts'

const BITS_PER_BYTE = 8
const FORMATS: Readonly<Record<string, { readonly bytes: number | null; readonly pixels: number | null }>> =
  table.formats

/** Limits of image files. */
export const FILES: readonly FunctionRecord[] = [
  {
    name: 'file_limit',
    subject: 'run',
    about: 'The largest image that a file of a format can contain.',
    parameters: [parameter('format', TEXT, 'the file format', { choices: Object.keys(FORMATS) })],
    result: record('file limit', { data: number(DATA), pixels: number(PIXEL) }),
    formula:
      'from the table: the data of the whole file, and the pixels of a side; infinite where the format sets none',
    source:
      'TIFF 6.0 and BigTIFF: 32 and 64 bits of offset; ITU-T T.81: 16 bits a side; PNG: 31 bits a side; WebP: 14 bits a side. Read in pages that quote them',
    validity: 'What the format allows. A program that opens the file may allow less.',
    mayBeInfinite: true,
    examples: [
      // 2³² bytes
      { formula: 'file_limit("TIFF").data', gives: '4294967296 B' },
      { formula: 'file_limit("WebP").pixels', gives: '16383 px' },
      { formula: 'file_limit("JPEG").pixels', gives: '65535 px' },
      { formula: 'file_limit("DNG")', refuses: 'format' },
    ],
    compute: (format: string) => {
      const { bytes, pixels } = FORMATS[format] as { bytes: number | null; pixels: number | null }
      return {
        data: bytes === null ? Number.POSITIVE_INFINITY : bytes * BITS_PER_BYTE,
        pixels: pixels ?? Number.POSITIVE_INFINITY,
      }
    },
  },
]
