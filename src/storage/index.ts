export { FILE_ENDING, FileError, fileName, openFile, saveFile, saveText } from './exchange/file.ts'
export { fromLink, isLink, LinkError, type LinkSize, linkSize, toLink } from './exchange/link.ts'
export { newId, openStore, type Store, type StoreOptions, type Summary } from './store/store.ts'
export { StoreError, type Trouble } from './store/store-error.ts'
