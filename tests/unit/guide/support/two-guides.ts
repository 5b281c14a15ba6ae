/** Two small guides as their authors write them: `here` may hand over to `there`. */
const dangers = `  danger:
    kind: question
    answers:
      fire: { to: stop-fire }
      unsure: { to: stop-unsure }
      none: { to: look }
`;
const ends = `  stop-fire: { kind: stop, danger: fire, urgency: emergency, call: [emergency] }
  stop-unsure: { kind: stop, danger: unsure, urgency: emergency, call: [emergency] }
  done: { kind: finish, urgency: none }
`;

/** Hands over to `there`, on its second track where an error was seen. */
export const here = `id: here
tracks: [a, b]
start: danger
nodes:
${dangers}  look:
    kind: question
    answers:
      well: { to: done }
      odd: { to: there/try }
      error: { to: there/try, track: seen, sets: [error-seen] }
      unsure: { to: done }
${ends}`;

/** `try` may heat the oven, but not on the track `seen`. */
export const there = `id: there
tracks: [fresh, seen]
start: danger
entries: [try]
nodes:
${dangers}  look:
    kind: question
    answers:
      error: { to: try, track: seen, sets: [error-seen] }
      unsure: { to: try }
  try:
    kind: question
    answers:
      'yes': { to: { fresh: inside, seen: done } }
      unsure: { to: done }
  inside:
    kind: question
    only: fresh
    answers:
      nothing: { to: forced, sets: [inside-nothing] }
      unsure: { to: done, sets: [inside-something] }
  forced:
    kind: question
    only: fresh
    answers:
      'no': { to: heat, sets: [door-not-forced, cooled] }
      unsure: { to: done, sets: [door-forced] }
  heat:
    kind: step
    action: set-knob
    heat: true
    only: fresh
    answers:
      quiet: { to: done, sets: [cooled] }
      unsure: { to: done, clears: [cooled] }
${ends}`;
