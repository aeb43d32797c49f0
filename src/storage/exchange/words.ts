const askAgain = 'Ask for it again, or for the file.'

/** The sentences on files and links, as users meet them. */
export const EXCHANGE_WORDS = {
  theFile: 'The file',
  notRead: (file: string) => `${file} could not be read: it was moved, or this browser may not open it.`,
  notText: (file: string) => `${file} is not a text file (its bytes are not UTF-8).`,
  backupTooLarge: (file: string) => `${file} is larger than 500 MB.`,
  fileTooLarge: (file: string) => `${file} is larger than 20 MB, which no worksheet needs.`,
  notOpened: (file: string, why: string) => `${file} cannot be opened. ${why}`,
  notWritten: (file: string, why: string) => `${file} could not be written: ${why}`,
  sameServerOnly:
    'Only sheets on the same server as this page can be opened by a link. Save the file, then open the saved file.',
  noAnswer: (file: string) => `${file} could not be fetched: the server does not answer. Try again later.`,
  notOnServer: (file: string, status: number) => `${file} is not on the server, or it may not be read (${status}).`,
  linkBroken: `This link was cut short or altered on the way. ${askAgain}`,
  linkEmpty: `This link holds no worksheet, or only a part of one. ${askAgain}`,
  linkUnpacksTooLarge: 'This link unpacks to more than 2 MB, which no worksheet needs. Ask for the file instead.',
  linkTooLong: 'This link is longer than any worksheet needs. Ask for the file instead.',
  linkNewer: (version: number, read: number) =>
    `This link was made by a newer Evenfield (version ${version} of links, this one reads up to ${read}). Reload the page to get the newest, then open the link again.`,
  linkBaseMissing: (job: string) =>
    `This link was made from a version of the job “${job}” that is not here. Reload the page to get the newest, then open the link again, or ask for the file.`,
  linkUnread: (why: string) => `The worksheet in this link cannot be read. ${why}`,
  linkCarried: (characters: string) => `About ${characters} characters; any messenger or mail carries it.`,
  linkLong: (characters: string) =>
    `About ${characters} characters; some messengers and mail programs cut an address past about 2\u202f000. Send the file instead, where this link does not arrive whole.`,
} as const
