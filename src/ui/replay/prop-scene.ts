import { Camera, Mat3, Program, Quat, Renderer, Transform, Vec3 } from 'ogl'
import { between, type Quaternion } from '../../shared/attitude/quaternion'
import type { Matrix3, Target } from '../../shared/model/target'
import { tipInPhone } from '../../shared/target/board'
import { type Inks, makeAxes, makeBoard, makeLantern, makeLevel } from './lantern'

const AXIS_LENGTH = 0.95

const PLACED = /* glsl */ `
  attribute vec3 position;
  uniform mat4 modelMatrix, viewMatrix, projectionMatrix;
  void main() {
    gl_Position = projectionMatrix * viewMatrix * modelMatrix * vec4(position, 1.0);
  }`

const TURNED = /* glsl */ `
  attribute vec3 position;
  attribute vec3 normal;
  uniform mat4 modelMatrix, viewMatrix, projectionMatrix;
  varying vec3 vNormal;
  void main() {
    vNormal = mat3(modelMatrix) * normal;
    gl_Position = projectionMatrix * viewMatrix * modelMatrix * vec4(position, 1.0);
  }`

/** Light from above and a little from the viewer's right; z of the world is up. */
const LIT = /* glsl */ `
  precision mediump float;
  uniform vec3 colour, ground;
  varying vec3 vNormal;
  void main() {
    float lit = 0.5 + 0.5 * dot(normalize(vNormal), normalize(vec3(0.45, -0.3, 0.85)));
    gl_FragColor = vec4(mix(ground, colour, 0.25 + 0.75 * lit), 1.0);
  }`

const PLAIN = /* glsl */ `
  precision mediump float;
  uniform vec3 colour;
  void main() { gl_FragColor = vec4(colour, 1.0); }`

type Rgb = [number, number, number]

/** Colours of the theme, as CSS. */
export interface SceneInk {
  text: string
  quiet: string
  line: string
  ground: string
}

/** Where the letter of each axis belongs on the canvas, px. */
export type AxisPlaces = [x: number, y: number][]

/** The prop in its attitude, drawn with WebGL. */
export class PropScene {
  readonly #renderer: Renderer
  readonly #camera: Camera
  readonly #world = new Transform()
  readonly #prop = new Transform()
  readonly #inks: Inks & { axes: Program; board: Program }
  #size = { width: 1, height: 1 }

  /** Null where the browser gives no WebGL. */
  static on(canvas: HTMLCanvasElement, target: Target): PropScene | null {
    const attributes = { alpha: true, depth: true, antialias: true }
    const context =
      canvas.getContext('webgl2', attributes) ?? canvas.getContext('webgl', attributes)
    return context === null ? null : new PropScene(canvas, target)
  }

  private constructor(canvas: HTMLCanvasElement, target: Target) {
    const dpr = Math.min(globalThis.devicePixelRatio, 2)
    this.#renderer = new Renderer({ canvas, alpha: true, antialias: true, dpr })
    const { gl } = this.#renderer
    gl.clearColor(0, 0, 0, 0)
    const ink = (vertex: string, fragment: string) =>
      new Program(gl, {
        vertex,
        fragment,
        cullFace: false,
        uniforms: { colour: { value: [1, 1, 1] }, ground: { value: [0, 0, 0] } },
      })
    this.#inks = {
      body: ink(TURNED, LIT),
      board: ink(TURNED, LIT),
      axes: ink(PLACED, PLAIN),
      glow: ink(PLACED, PLAIN),
      line: ink(PLACED, PLAIN),
    }
    this.#camera = new Camera(gl, { fov: 26, near: 0.1, far: 20 })
    this.#camera.up.set(0, 0, 1)
    this.#camera.position.set(3.3, -2.5, 1.9)
    this.#camera.lookAt([0, 0.12, 0.14])
    this.#build(target)
  }

  #build(target: Target): void {
    const { gl } = this.#renderer
    const lantern = makeLantern(gl, this.#inks)
    lantern.quaternion.copy(quatOf(between([0, 1, 0], tipInPhone(target))))
    const board = new Transform()
    const plate = makeBoard(gl, this.#inks.board)
    const away = tipInPhone(target).map((part) => part * plate.position.y) as Rgb
    plate.position.set(0, 0, 0)
    plate.quaternion.copy(boardInProp(target.mounting))
    board.position.set(...away)
    plate.setParent(board)
    for (const part of [lantern, board, makeAxes(gl, this.#inks.axes, AXIS_LENGTH)]) {
      part.setParent(this.#prop)
    }
    this.#prop.setParent(this.#world)
    makeLevel(gl, this.#inks.line).setParent(this.#world)
  }

  resize(width: number, height: number): void {
    this.#size = { width, height }
    this.#renderer.setSize(width, height)
    this.#camera.perspective({ aspect: width / height })
  }

  /**
   * @param light colour of the lantern, as CSS; null for dark
   * @returns places of the letters x, y and z
   */
  draw(pose: Quaternion, light: string | null, ink: SceneInk): AxisPlaces {
    const { body, board, axes, glow, line } = this.#inks
    const ground = rgbOf(ink.ground)
    for (const [program, colour] of [
      [body, ink.quiet],
      [board, ink.text],
      [axes, ink.text],
      [line, ink.line],
    ] as const) {
      program.uniforms.colour.value = rgbOf(colour)
      program.uniforms.ground.value = ground
    }
    glow.uniforms.colour.value = light === null ? ground : rgbOf(light)
    this.#prop.quaternion.copy(quatOf(pose))
    this.#renderer.render({ scene: this.#world, camera: this.#camera })
    return [0, 1, 2].map((axis) => {
      const end = new Vec3(0, 0, 0)
      end[axis] = AXIS_LENGTH + 0.16
      end.applyMatrix4(this.#prop.worldMatrix)
      this.#camera.project(end)
      const { width, height } = this.#size
      return [((end.x + 1) / 2) * width, ((1 - end.y) / 2) * height]
    })
  }

  /** Gives the graphics memory back at once; browsers allow only a few contexts. */
  dispose(): void {
    this.#renderer.gl.getExtension('WEBGL_lose_context')?.loseContext()
  }
}

function quatOf([w, x, y, z]: Quaternion): Quat {
  return new Quat(x, y, z, w)
}

/** Rows of the mounting are the board's axes in the prop: columns of its rotation there. */
function boardInProp(m: Matrix3): Quat {
  return new Quat().fromMatrix3(new Mat3(...m))
}

/** Red, green and blue of a CSS colour of the forms #rrggbb and rgb(r g b), 0 to 1. */
function rgbOf(css: string): Rgb {
  const hex = /^#([0-9a-f]{6})$/i.exec(css.trim())?.[1]
  if (hex !== undefined) {
    return [0, 2, 4].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255) as Rgb
  }
  const parts = css.match(/[\d.]+/g)?.map(Number) ?? []
  return [0, 1, 2].map((i) => (parts[i] ?? 0) / 255) as Rgb
}
