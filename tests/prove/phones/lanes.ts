/** Does what there is to do in several lanes at once: each lane takes the next as soon as it is free. Where one fails no other is begun. */
export async function inLanes<Lane, Work>(
  lanes: readonly Lane[],
  works: readonly Work[],
  doOne: (lane: Lane, work: Work) => Promise<void>,
): Promise<void> {
  const left = [...works];
  const problems: unknown[] = [];
  const drive = async (lane: Lane): Promise<void> => {
    for (let next = left.shift(); next !== undefined && problems.length === 0; next = left.shift())
      await doOne(lane, next).catch((problem: unknown) => problems.push(problem));
  };
  await Promise.all(lanes.map(drive));
  if (problems.length > 0) throw problems[0];
}
