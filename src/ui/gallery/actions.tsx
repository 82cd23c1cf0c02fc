import { useState } from 'preact/hooks'
import { fail } from '../../shared/model/result'
import { Button, FileButton, NameForm, NextStep } from '../common'
import { Part } from './part'

const idle = () => undefined

export function Actions() {
  const [pressed, setPressed] = useState(true)
  const [naming, setNaming] = useState(false)
  return (
    <>
      <Part name="Button" says="Amber is the one thing to do now: at most one on a screen.">
        <div class="buttons">
          <Button tone="amber" onClick={idle}>
            Measure
          </Button>
          <Button onClick={idle}>Plain</Button>
          <Button tone="quiet" onClick={idle}>
            Quiet
          </Button>
          <Button pressed={pressed} onClick={() => setPressed(!pressed)}>
            {pressed ? 'Pressed' : 'Not pressed'}
          </Button>
          <Button disabled>Disabled</Button>
          <Button tone="amber" disabled>
            Disabled
          </Button>
        </div>
        <Button big wide onClick={idle}>
          Big and wide, for the thumb
        </Button>
      </Part>
      <Part name="File button" says="Asks for files of this device.">
        <FileButton accept=".none" onFiles={idle}>
          Choose a file
        </FileButton>
      </Part>
      <Part name="Next step" says="What was seen, then one thing to do.">
        <NextStep
          quiet
          text="Ring and Sweep are confused in 8 of 48: look at them."
          action="Look at them"
          href="#/gallery"
        />
      </Part>
      <Part name="Name form" says="In place, without a dialog; a failure is told at the field.">
        {naming ? (
          <NameForm
            label="Name of the gesture"
            action="Rename"
            before="Ring"
            hint="Any other name than Raise."
            submit={async (name) =>
              fail('name/example', `This is the gallery: nothing was renamed to ${name}.`)
            }
            onCancel={() => setNaming(false)}
          />
        ) : (
          <div class="buttons">
            <Button onClick={() => setNaming(true)}>Rename</Button>
          </div>
        )}
      </Part>
    </>
  )
}
