import { useEffect, useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import type { PackageLicence } from '../../shared/present/licences'
import { LICENCES } from '../../shared/words/en/licences'
import { loadLicences } from '../../state/licences'
import { Button, Notice, Screen } from '../common'

/** What the app is made of, and under which terms. */
export function LicencesScreen() {
  const [read, setRead] = useState<Result<PackageLicence[]> | null>(null)
  useEffect(() => {
    void loadLicences().then(setRead)
  }, [])
  return (
    <Screen title={LICENCES.title} back="#/library">
      <p>{LICENCES.ownLicence}</p>
      <Button href="#/gallery">{LICENCES.toGallery}</Button>
      {read?.ok === false && (
        <Notice tone="trouble" live>
          <p>{read.message}</p>
        </Notice>
      )}
      {read?.ok === true && (
        <>
          <h2>{LICENCES.packages}</h2>
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
      <summary translate={false}>
        {name} {version}, {licence}
      </summary>
      {text === '' ? (
        <p class="small">{LICENCES.noText}</p>
      ) : (
        <p class="small licence-text" lang="en" translate={false}>
          {text}
        </p>
      )}
    </details>
  )
}
