import {
  Box,
  Cylinder,
  Geometry,
  Mesh,
  type OGLRenderingContext,
  type Program,
  Transform,
} from 'ogl'

/** Programs that parts of the picture are drawn with. */
export interface Inks {
  /** Lit from above. */
  body: Program
  /** The lantern's own light. */
  glow: Program
  line: Program
}

/** Where the lantern's parts lie along the prop, in hand's breadths from its middle; tip up. */
const HANDLE = { from: -0.75, to: 0.1, radius: 0.045 }
const CAGE = { from: 0.14, to: 0.78, radius: 0.2 }
const BARS = 6
/** Where the board's plate lies along the handle. */
const BOARD_AT = -0.36

interface Tube {
  from: number
  to: number
  radius: number
  radiusTop?: number
}

/** A hand lantern along y with its tip at +y: handle, cage, glass, cap and ring. */
export function makeLantern(gl: OGLRenderingContext, inks: Inks): Transform {
  const lantern = new Transform()
  const tube = (program: Program, { from, to, radius, radiusTop = radius }: Tube) => {
    const geometry = new Cylinder(gl, {
      radiusTop,
      radiusBottom: radius,
      height: to - from,
      radialSegments: 18,
    })
    const mesh = new Mesh(gl, { geometry, program })
    mesh.position.y = (from + to) / 2
    mesh.setParent(lantern)
    return mesh
  }
  tube(inks.body, HANDLE)
  tube(inks.body, { from: HANDLE.to, to: CAGE.from, radius: 0.05, radiusTop: CAGE.radius })
  tube(inks.body, { from: CAGE.from, to: CAGE.from + 0.04, radius: CAGE.radius + 0.02 })
  tube(inks.body, { from: CAGE.to - 0.04, to: CAGE.to, radius: CAGE.radius + 0.02 })
  tube(inks.body, { from: CAGE.to, to: CAGE.to + 0.13, radius: CAGE.radius, radiusTop: 0.04 })
  tube(inks.glow, { from: CAGE.from + 0.04, to: CAGE.to - 0.04, radius: CAGE.radius - 0.05 })
  for (let i = 0; i < BARS; i++) {
    const angle = (2 * Math.PI * i) / BARS
    const bar = tube(inks.body, { from: CAGE.from, to: CAGE.to, radius: 0.014 })
    bar.position.x = CAGE.radius * Math.cos(angle)
    bar.position.z = CAGE.radius * Math.sin(angle)
  }
  return lantern
}

/** The board's plate along its own x and y, a notch of a block at its corner +x +y. */
export function makeBoard(gl: OGLRenderingContext, ink: Program): Transform {
  const board = new Transform()
  const plate = new Mesh(gl, {
    geometry: new Box(gl, { width: 0.3, height: 0.42, depth: 0.025 }),
    program: ink,
  })
  const corner = new Mesh(gl, {
    geometry: new Box(gl, { width: 0.08, height: 0.08, depth: 0.07 }),
    program: ink,
  })
  corner.position.set(0.11, 0.17, 0.02)
  plate.setParent(board)
  corner.setParent(board)
  board.position.y = BOARD_AT
  return board
}

/** Three arrows from the middle along x, y and z. */
export function makeAxes(gl: OGLRenderingContext, ink: Program, length: number): Transform {
  const axes = new Transform()
  for (let axis = 0; axis < 3; axis++) {
    const arrow = new Transform()
    const shaft = new Cylinder(gl, { radiusTop: 0.012, radiusBottom: 0.012, height: length })
    const head = new Cylinder(gl, { radiusTop: 0, radiusBottom: 0.04, height: 0.12 })
    const shaftMesh = new Mesh(gl, { geometry: shaft, program: ink })
    const headMesh = new Mesh(gl, { geometry: head, program: ink })
    shaftMesh.position.y = length / 2
    headMesh.position.y = length
    shaftMesh.setParent(arrow)
    headMesh.setParent(arrow)
    if (axis === 0) arrow.rotation.z = -Math.PI / 2
    if (axis === 2) arrow.rotation.x = Math.PI / 2
    arrow.setParent(axes)
  }
  return axes
}

/** The level through the prop's middle: two rings and a line ahead, so that up is seen. */
export function makeLevel(gl: OGLRenderingContext, ink: Program): Mesh {
  const points: number[] = []
  const add = (radius: number, angle: number) =>
    points.push(radius * Math.cos(angle), radius * Math.sin(angle), 0)
  const pieces = 72
  for (const radius of [0.6, 1.1]) {
    for (let i = 0; i < pieces; i++) {
      add(radius, (2 * Math.PI * i) / pieces)
      add(radius, (2 * Math.PI * (i + 1)) / pieces)
    }
  }
  points.push(0, 0, 0, 0, 1.35, 0, 0, 1.35, 0, -0.08, 1.22, 0, 0, 1.35, 0, 0.08, 1.22, 0)
  const geometry = new Geometry(gl, {
    position: { size: 3, data: new Float32Array(points) },
  })
  return new Mesh(gl, { geometry, program: ink, mode: gl.LINES })
}
