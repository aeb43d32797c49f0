import { fileURLToPath } from 'node:url'
import { figuresOf } from './make.ts'

/** Made while this module is imported: drawings fetch their own files, which cannot be done once it has been. */
export const figures = await figuresOf(fileURLToPath(new URL('../../templates', import.meta.url)))
