/** The demo library: the night parade whose lanterns answer movements. */
export const DEMO = {
  /** Names, and what the carrier does. */
  movements: {
    raise: { name: 'Raise', note: 'Lift the lantern above the head and take it down again.' },
    swing: { name: 'Swing', note: 'Let the lantern swing to and fro like a pendulum, twice.' },
    ring: { name: 'Ring', note: 'Ring the lantern from the wrist like a hand bell.' },
    sweep: { name: 'Sweep', note: 'Draw a wide flat arc across the body and back.' },
    pour: {
      name: 'Pour',
      note: 'Tip the lantern slowly forward as if pouring from it, then set it upright.',
    },
    knock: { name: 'Knock', note: 'Rap twice in the air, quickly.' },
    twist: { name: 'Twist', note: 'Turn the lantern about its handle and back, as with a key.' },
    bow: { name: 'Bow', note: 'Dip the lantern forward and down in a greeting, and up again.' },
  },
  name: 'Night parade (demo)',
  phoneOf: (tester: string) => `Generated phone of ${tester}`,
}
