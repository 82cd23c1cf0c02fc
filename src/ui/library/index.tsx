import './library.css'
import { LIBRARY } from '../../shared/words/en/library'
import { HOME, Screen } from '../common'
import { FilesSection } from './files-section'
import { LibrariesSection } from './libraries-section'
import { PhoneSection } from './phone-section'
import { StorageSection } from './storage-section'
import { UndoSection } from './undo-section'

/** Everything about libraries as a whole, their files, and this phone. */
export function LibraryScreen() {
  return (
    <Screen title={LIBRARY.libraries} back={HOME}>
      <LibrariesSection />
      <FilesSection />
      <UndoSection />
      <StorageSection />
      <PhoneSection />
    </Screen>
  )
}
