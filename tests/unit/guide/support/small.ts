/** A guide as small as can be with every kind of node, two tracks and a node for one of them. */
export const smallSource = `id: small
tracks: [a, b]
start: danger
nodes:
  danger:
    kind: question
    answers:
      fire: { to: stop-fire }
      unsure: { to: stop-fire }
      none: { to: look }
  look:
    kind: step
    action: look
    answers:
      seen: { to: { a: done, b: ask }, sets: [error-seen] }
      moved: { to: ask, track: b }
      unsure: { to: done }
  ask:
    kind: question
    only: b
    answers:
      'yes': { to: done }
      unsure: { to: done }
  stop-fire: { kind: stop, danger: fire, urgency: emergency, call: [emergency], care: danger }
  done: { kind: finish, urgency: none }
`;

/** The small guide with one text replaced, which must be there exactly once. */
export function edited(from: string, to: string): string {
  if (smallSource.split(from).length !== 2) throw new Error(`Not there once: ${from}`);
  return smallSource.replace(from, () => to);
}

/** A guide that takes pages of two of the blocks below. */
export const takingSource = `id: taking
tracks: [a, b]
start: danger
blocks:
  danger: { none: look }
  cool-down: { cool: { to: { a: done, b: ask } } }
rules:
  - { page: ask, most: 1 }
nodes:
  look:
    kind: question
    answers:
      seen: { to: near }
      moved: { to: near, track: b }
      unsure: { to: stop-wait }
  ask:
    kind: question
    answers:
      'yes': { to: done }
      unsure: { to: done }
  done: { kind: finish, urgency: none }
`;

/** Blocks by the names of their files. */
export const smallBlocks = {
  'cool-down': `exits: [cool, opened]
rules:
  - { page: wait, needs: near.warm }
  - { answer: near.unsure, ends-at: [wait, stop-later] }
  - { page: open, most: 1 }
nodes:
  wait:
    kind: step
    action: wait
    answers:
      cooled: { to: exit/cool, sets: [cooled] }
      unsure: { to: stop-wait }
  near:
    kind: question
    answers:
      cool: { to: exit/cool, sets: [cooled] }
      warm: { to: wait }
      unsure: { to: wait }
  open:
    kind: question
    answers:
      opened: { to: exit/opened }
      unsure: { to: stop-later }
`,
  danger: `exits: [none]
nodes:
  danger:
    kind: question
    answers:
      fire: { to: stop-fire }
      unsure: { to: stop-fire }
      none: { to: exit/none }
  stop-fire: { kind: stop, danger: fire, urgency: emergency, call: [emergency], care: danger }
`,
  endings: `nodes:
  stop-wait: { kind: stop, urgency: soon, call: [technician] }
  stop-later: { kind: stop, urgency: soon, call: [technician] }
`,
};
