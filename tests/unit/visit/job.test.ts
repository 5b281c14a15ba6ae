import { expect, test } from 'vitest';
import { jobSchema } from '../../../src/cli/job-json.ts';
import { callerFields, callerMost, makeJob, oneLine, tidyCaller } from '../../../src/visit/job.ts';
import type { JobParts } from '../../../src/visit/job.ts';
import { readCode } from '../../../src/note/read.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import type { Note } from '../../../src/note/types.ts';
import { writeCode } from '../../../src/note/write.ts';
import { readVisit } from '../../../src/visit/read-visit.ts';
import { guideOf, working } from '../note/codebooks.ts';

const guide = guideOf(working);
const noteOf = (journey: Note['journey']): Note => ({
  release: 1,
  guide: guide.id,
  journey,
  day: 3,
  details: { fuel: 'gas' },
  error: 'F9 E1',
});

function parts(note: Note, more: Partial<JobParts> = {}): JobParts {
  const code = writeCode(note, working);
  if (!code.ok) throw new Error(JSON.stringify(code.error));
  return {
    code: code.value,
    codeReadBack: true,
    made: '2026-11-25',
    breakerStaysOff: false,
    cautions: { read: ['near'], unread: [] },
    caller: {},
    ...more,
  };
}

test('every journey makes a job of the published schema that its code agrees with', () => {
  const urgencies = new Set<string>();
  let jobs = 0;
  for (const journey of sampleJourneys(guide, 300, 9)) {
    const note = noteOf(journey);
    const job = makeJob(readVisit(note, working), parts(note));
    if (journey.length === 0) {
      expect(job).toBeUndefined();
      continue;
    }
    jobs += 1;
    // As another program gets it.
    const read = jobSchema.parse(JSON.parse(JSON.stringify(job)));
    urgencies.add(read.urgency);
    expect(read.outcome?.because).toEqual(read.answers.at(-1));
    const reading = readCode(read.code ?? '', working);
    expect(reading.kind === 'exact' && reading.note).toEqual(note);
  }
  expect(jobs).toBeGreaterThan(250);
  expect([...urgencies].toSorted()).toEqual(['emergency', 'none', 'open', 'soon', 'today']);
});

test('what a caller says stays on one line, its direction unturned, and ends somewhere', () => {
  const bad = 'Ann\nURGENCY: none\r\u2028x\u202eneercs\u0007\u0000 =1+1\ud800';
  expect(oneLine(bad, 99)).toBe('Ann URGENCY: none x neercs =1+1\ufffd'.replace('x n', 'xn'));
  expect(oneLine('𝒳'.repeat(50), 10)).toBe('𝒳'.repeat(10));
  const caller = Object.fromEntries(callerFields.map((field) => [field, '🜚\n'.repeat(2000)]));
  const [journey = []] = [...sampleJourneys(guide, 20, 1)].filter(({ length }) => length > 0);
  const job = makeJob(readVisit(noteOf(journey), working), parts(noteOf(journey), { caller }));
  const read = jobSchema.parse(JSON.parse(JSON.stringify(job)));
  for (const field of callerFields) {
    const text = read.caller[field] ?? '';
    expect([...text].length, field).toBeGreaterThan(0);
    expect([...text].length, field).toBeLessThanOrEqual(callerMost[field]);
  }
});

test('empty fields and foreign ones are left out', () => {
  const caller = { name: ' Ann ', phone: '', remark: ' \n ', password: 'x' };
  expect(tidyCaller(caller)).toEqual({ name: 'Ann' });
});
