// Shapes of what goes to and fro, for the other files' JSDoc. Lengths in mm, angles in degrees, forces in N.

/**
 * What the server sends of a project.
 * @typedef {object} Project
 * @property {string} revision changes with the files
 * @property {string} faults in the reader's words; empty if the files are sound
 * @property {string} folder its name
 * @property {string} version of the program
 * @property {string} hand name
 * @property {string} need name
 * @property {string[]} fingers names
 * @property {string[]} joints names
 * @property {string[]} motors names
 * @property {number} greatestTension
 * @property {Body[]} bodies of the hand, palm first
 * @property {{name: string, above: boolean, fingers: string[]}[]} grips
 * @property {Thing[]} objects
 * @property {number} wanted share of pick-ups
 * @property {Object<string, string>} values as they stand in the files, by key
 * @property {number} undos
 * @property {number} redos
 * @property {string[][]} assumptions where and what
 * @property {boolean} parquet whether tables can be written as Parquet
 */

/**
 * An object of the need.
 * @typedef {object} Thing
 * @property {string} name
 * @property {string} surface
 * @property {string} mass as people read it
 * @property {string} squeeze the most it bears, or empty
 * @property {string} stands
 * @property {number} weight
 * @property {string[]} grips names
 * @property {any[]} parts solids
 */

/**
 * A body of the hand.
 * @typedef {object} Body
 * @property {string} name
 * @property {number[]} size length, width, bone
 * @property {number[]} pad length, thickness
 * @property {boolean} [round] a round tip
 */

/**
 * One moment of a closing.
 * @typedef {object} Frame
 * @property {number} p phase: 0 coming in, 1 closing, 2 lifting
 * @property {number} t greatest tension
 * @property {number[]} q joint angles
 * @property {number[][]} b poses of the bodies: place and two columns of the rotation
 * @property {number[]} o pose of the object
 * @property {number[]} c its centre of mass
 * @property {number[]} f force of each body on the object
 * @property {number[]} k pressed cells and their pressure in kPa, in turn
 * @property {number} z height of the table
 */

/**
 * One closing.
 * @typedef {object} Closing
 * @property {string} object
 * @property {string} grip
 * @property {{x: number, y: number, turn: number}} conditions
 * @property {string} outcome key of its mark
 * @property {string} words
 * @property {string} reason
 * @property {string[]} cautions
 * @property {boolean} complete all moments, not the last only
 * @property {string[]} bodies
 * @property {any[][]} firstTouches name, tension, phase
 * @property {any[][]} contacts point, force, normal, friction, body
 * @property {number[][]} taxels body, place, normal, area
 * @property {Frame[]} frames
 * @property {number} step class width of the pressure scale, kPa; the page's own
 */

/**
 * What is in view; it stands in the address.
 * @typedef {object} Place
 * @property {number} q question
 * @property {string} object
 * @property {string} grip
 * @property {number} x
 * @property {number} y
 * @property {number} turn
 * @property {Object<string, string|number>|null} more what else differs from the nominal
 * @property {string} taxel column of the taxel whose curve is shown
 * @property {string} log that is followed; empty: the newest
 */

/**
 * News of the map.
 * @typedef {object} MapNews
 * @property {string} object
 * @property {string} grip
 * @property {string} revision
 * @property {string} state running, done, stopped or failed: why
 * @property {number} spanMm
 * @property {number} cells of the finest grid
 * @property {number} stride of the cells that are new
 * @property {boolean} sharing ensembles are under way
 * @property {number} done
 * @property {number} of
 * @property {boolean} picture there is a new one to fetch
 * @property {string} fresh new cells: row, column, outcome and eighths held
 * @property {number} complete cells of the finest grid that is complete, 0 = none yet
 * @property {boolean} shares whether that has held shares
 * @property {number} seconds it took, once it is done
 * @property {number|null} captureMm
 * @property {boolean} limited the range ends at the map's edge
 * @property {number|null} areaCm2
 * @property {string[]} sentences what was found, once it is done
 * @property {number[][]} undecided places
 * @property {string} trouble why finished runs are not kept
 */

/**
 * What a log says that is followed. What is not there before the log has named its columns is left out.
 * @typedef {object} NowState
 * @property {number} version another for every state
 * @property {{name: string, modified: number}[]} logs in the folder, the newest first
 * @property {string} log that is followed
 * @property {string} state none, no log, running, ended
 * @property {boolean} known the log has named its columns
 * @property {string} refusal why it is no log
 * @property {string} layoutId of the description of the columns
 * @property {any} layout that description, if the page has not got it yet: taxels (column, pad), unit, units, force, lines
 * @property {string} started UTC
 * @property {string} source
 * @property {number} wall of the last reading, ms
 * @property {number} arrival of the last reading, s since the log's start
 * @property {number|null} since from when on it is counted, s
 * @property {number} skipped bytes left out to keep up
 * @property {boolean} reading more is there than was read so far
 * @property {number} silent s since it grew
 * @property {number} rate readings a second
 * @property {number} values of taxels a second
 * @property {number} readings
 * @property {string} lost in words, empty without a column that counts
 * @property {number} back stamps that go back
 * @property {number} equal stamps that repeat
 * @property {number} malformed lines in the side file
 * @property {string} lastFault
 * @property {number} unreadable lines of the log itself
 * @property {string} lastUnreadable
 * @property {string[]} warnings in words
 * @property {string} marks a letter per taxel: r saturated now, w was, n no number, s stuck, a full stop for none
 * @property {(number|null)[]} last value of each taxel
 * @property {(number|null)[]} zero mean of the first second
 * @property {Object<string, number|null>} others last values of the other columns
 * @property {(number|null)[]} [newtons] force on each taxel, if there is a calibration
 * @property {{name: string, force: number, error: number, touched: boolean}[]} [pads] force on each pad
 * @property {number} from time of the first strip of the curves, s
 * @property {number} width of a strip, s
 * @property {Object<string, {low: (number|null)[], high: (number|null)[]}>} curves by column
 */

/**
 * The page as its parts see it.
 * @typedef {object} Page
 * @property {Project|null} project
 * @property {Closing|null} closing
 * @property {Place} place
 * @property {(change: Partial<Place>, live?: boolean) => Promise<void>} go puts a closing in view
 * @property {(key: string) => void} saved a value was written
 * @property {() => void} play plays the closing in view
 */

export {};
