/** The sentences about sections that join a sheet. */

export const otherKinds = (yours: string, other: string): string => `yours is ${yours}, the other ${other}`
export const framesApart = 'each is a picture with readings of its own'
export const otherKit = 'they are different pieces of kit'
export const optionMissing = (option: string): string => `yours has no option “${option}”`
export const kindUnknown = 'yours is empty or in error, and the two are declared differently'
export const columnMissing = (column: string): string => `yours has no column “${column}”`
export const columnComputed = (column: string): string => `the columns “${column}” are computed differently`
export const columnKinds = (column: string): string => `the columns “${column}” are filled in differently`
export const noPart = (part: string): string => `No part is named “${part}”.`
export const noProvider = (name: string): string => `Nothing computes “${name}”, and no section asks for it.`
export const allSetUps = (label: string): string => `${label}, all set-ups`
export const mostOfSetUps = (label: string): string => `${label}, at most in a set-up`
export const inOrder = 'In the order of work'
export const inOrderOf = (setUp: string): string => `${setUp}, in the order of work`
