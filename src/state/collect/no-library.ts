import { fail } from '../../shared/model/result'
import { OPEN_LIBRARY } from '../../shared/words/en/open-library'

/** Collecting is for the library that is open. */
export const NO_LIBRARY = fail('collect/no-library', OPEN_LIBRARY.noneFirst)
