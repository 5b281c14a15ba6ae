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
