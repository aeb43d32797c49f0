import type { Worksheet } from '../../worksheet/schema/document.ts'
import { DocumentError, readDocument, writeDocument } from '../../worksheet/schema/read-document.ts'
import { withoutPreviews } from './previews.ts'
import { EXCHANGE_WORDS as WORDS } from './words.ts'

/** Why a file cannot be opened or saved: what is wrong, where, and what to do. */
export class FileError extends Error {
  override readonly name = 'FileError'
}

export const FILE_ENDING = '.evenfield.json'

const MOST_BYTES = 20_000_000
/** A backup contains many. */
const MOST_BYTES_OF_A_BACKUP = 500_000_000
/** Systems take names of 255 bytes; browsers add to them where one is taken. */
const LONGEST_STEM = 180
/** Names some systems reserve for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i

function shortened(words: string): string {
  const bytes = new Uint8Array(LONGEST_STEM)
  return words.slice(0, new TextEncoder().encodeInto(words, bytes).read)
}

/** A file name any system takes, still readable: letters and digits of every script, hyphens for the rest. */
export function fileName(title: string): string {
  const words = title.normalize('NFC').replace(/[^\p{L}\p{N}\p{M}_.]+/gu, '-')
  const stem = shortened(words).replace(/^[-.]+|[-.]+$/g, '')
  const safe = stem === '' ? 'worksheet' : RESERVED.test(stem) ? `${stem}-worksheet` : stem
  return safe + FILE_ENDING
}

type Chosen = Blob & { readonly name?: string }
const called = (file: Chosen): string => file.name ?? WORDS.theFile

async function textOf(file: Chosen): Promise<string> {
  let bytes: ArrayBuffer
  try {
    bytes = await file.arrayBuffer()
  } catch (error) {
    throw new FileError(WORDS.notRead(called(file)), { cause: error })
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (error) {
    throw new FileError(WORDS.notText(called(file)), { cause: error })
  }
}

/** The text of a file where it is a backup; undefined where it is something else. */
export async function backupIn(file: Chosen): Promise<string | undefined> {
  if (file.size > MOST_BYTES_OF_A_BACKUP) throw new FileError(WORDS.backupTooLarge(called(file)))
  const start = await file.slice(0, 200).text()
  if (!start.includes('"evenfield-backup"')) return undefined
  return textOf(file)
}

/** Reads a file chosen by the user; anything wrong is a FileError that names the file and the place. */
export async function openFile(file: Chosen): Promise<Worksheet> {
  const name = called(file)
  if (file.size > MOST_BYTES) throw new FileError(WORDS.fileTooLarge(name))
  const text = await textOf(file)
  try {
    return readDocument(text)
  } catch (error) {
    if (!(error instanceof DocumentError)) throw error
    throw new FileError(WORDS.notOpened(name, error.message), { cause: error })
  }
}

interface SavePicker {
  showSaveFilePicker(options: object): Promise<{
    createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>
  }>
}

/** Saves a text to disk: where the user says, if the browser can ask, else as a download. False where the user cancels. */
export async function saveText(name: string, text: string, type: string): Promise<boolean> {
  if (!('showSaveFilePicker' in window)) {
    download(name, new Blob([text], { type }))
    return true
  }
  try {
    const handle = await (window as unknown as SavePicker).showSaveFilePicker({ suggestedName: name })
    const writable = await handle.createWritable()
    await writable.write(text)
    await writable.close()
    return true
  } catch (error) {
    const kind = (error as Error).name
    if (kind === 'AbortError') return false
    // Refused inside a frame or by a studio's policy; a download still works.
    if (kind !== 'SecurityError' && kind !== 'NotAllowedError') {
      throw new FileError(WORDS.notWritten(name, (error as Error).message), { cause: error })
    }
    download(name, new Blob([text], { type }))
    return true
  }
}

/** Saves a worksheet to a file named for its title. False where the user cancels. */
export const saveFile = (worksheet: Worksheet): Promise<boolean> =>
  saveText(fileName(worksheet.title), writeDocument(withoutPreviews(worksheet)), 'application/json')

/** Saves something as a download of the browser. */
export function download(name: string, content: Blob): void {
  const address = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The download reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
