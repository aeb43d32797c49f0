export { FILE_ENDING, FileError, fileName, openFile, saveFile, saveText } from './file.ts'
export { fromLink, isLink, LinkError, type LinkSize, linkSize, toLink } from './link.ts'
export { newId, openStore, type Store, type StoreOptions, type Summary } from './store.ts'
export { StoreError, type Trouble } from './store-error.ts'
