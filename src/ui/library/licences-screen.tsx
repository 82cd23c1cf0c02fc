import { useEffect, useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import type { PackageLicence } from '../../shared/present/licences'
import { loadLicences } from '../../state/licences'
import { Button, Notice, Screen } from '../common'

/** What the app is made of, and under which terms. */
export function LicencesScreen() {
  const [read, setRead] = useState<Result<PackageLicence[]> | null>(null)
  useEffect(() => {
    void loadLicences().then(setRead)
  }, [])
  return (
    <Screen title="Licences" back="#/library">
      <p>
        Movewright and the C sources that it exports are under the MIT licence: use, change and ship
        them, with the notice kept. No warranty.
      </p>
      <Button href="#/gallery">Gallery: the parts this app is drawn with</Button>
      {read?.ok === false && (
        <Notice tone="trouble" live>
          <p>{read.message}</p>
        </Notice>
      )}
      {read?.ok === true && (
        <>
          <h2>Packages inside the app</h2>
          {read.value.map((one) => (
            <Licence key={one.name} one={one} />
          ))}
        </>
      )}
    </Screen>
  )
}

function Licence({ one: { name, version, licence, text } }: { one: PackageLicence }) {
  return (
    <details class="licence">
      <summary>
        {name} {version}, {licence}
      </summary>
      <p class="small licence-text">{text === '' ? 'The package gives no text.' : text}</p>
    </details>
  )
}
