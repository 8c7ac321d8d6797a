import {Trouble} from '../platform/trouble.ts';
import {hasProblem} from '../profile/finding.ts';
import {withMoved} from '../profile/moved.ts';
import {listed, nameOf} from '../profile/names.ts';
import type {Profile} from '../profile/types.ts';
import {saidJson} from '../report/said/json.ts';
import {sentenceOf} from '../report/said/said.ts';
import {sayIn} from '../report/said/say.ts';
import {
	type ArrangementAnswer,
	asItStands,
	ladderAnswer,
	movableIds,
	plannedPlaces,
	whatIf,
	whichSpot,
} from '../study/arrangement/answer.ts';
import {planMeasures} from '../study/arrangement/measures.ts';
import type {ThingMove} from '../study/arrangement/moves.ts';
import {planBench} from '../study/arrangement/planBench.ts';
import {type PlanSearchStep, searchPlan} from '../study/arrangement/planSearch.ts';
import {planSpace} from '../study/arrangement/planSpace.ts';
import {type ArrangementRow, rowContents} from '../study/arrangement/row.ts';
import {type ArrangementSpace, canBeJudged} from '../study/arrangement/spaceOf.ts';
import {withSpeakerMoves} from '../study/arrangement/speakerMoves.ts';
import {readSpots} from '../study/arrangement/spots.ts';
import {readMoves} from '../study/placement/moves.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import type {Vector} from '../study/survey/vectors.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {folderOf, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'arrange',
	summary: 'Plan where seats and subs go: what if, which spot, show me better',
	takes: 'PROFILE',
	flags: {
		move: {
			type: 'string',
			isMultiple: true,
			value: 'NAME=WAY:LENGTH',
			help: 'What if this stood there; NAME is a sub or “seats”; ways: left, right, forward, back',
		},
		spots: {
			type: 'string',
			value: 'A,B,C',
			help: 'Which of up to five spots for one sub, such as screen-left,back-right or 0.4m/5.1m',
		},
		sub: {type: 'string', value: 'ID', help: 'The sub that --spots is about; the first where not given'},
		search: {type: 'boolean', help: 'Search: the best with nothing lifted, one thing, two, the seats too'},
		seat: {
			type: 'string',
			value: 'LENGTH',
			help: 'From the screen wall to the reference seat, where it was not taped',
		},
		write: {type: 'string', value: 'NAME', help: 'Keep what was chosen as the plan of a new profile'},
	},
	examples: [
		['roomtare arrange cellar-2026', 'the bass at the seats as everything stands'],
		[
			'roomtare arrange cellar-2026 --move seats=forward:30cm',
			'what if the seats stood 30 cm nearer to the screen',
		],
		[
			'roomtare arrange cellar-2026 --spots screen-left,back-right --sub sub2',
			'which of two spots for the second sub',
		],
		[
			'roomtare arrange cellar-2026 --search --write "Cellar planned"',
			'the best arrangements by what has to be lifted; the advised one kept as a plan',
		],
	],
	async run(context) {
		const profile = await profileFrom(context, context.input[0]!);
		const unit = profile.lengthUnit ?? 'm';
		const inMetres = sayIn(profile);
		const seatMetres = await lengthFlag(context, profile);
		const found = planSpace(profile, adjustNetwork(profile), seatMetres);
		if (!found.shape) {
			if (context.flags.json) context.out(saidJson({findings: found.findings}, inMetres));
			else {
				const {wrap} = await import('../report/wrap.ts');
				const sentences = found.findings.map(one => sentenceOf(one, sayIn(profile, unit)));
				context.out(sentences.flatMap(sentence => wrap(sentence, context.columns)).join('\n'));
			}

			return exitCode.no;
		}

		const {space, shape, speakers} = found;
		if (!canBeJudged(space)) {
			const outside = space.findings.filter(({kind}) => kind === 'problem');
			if (context.flags.json) context.out(saidJson({findings: outside}, inMetres));
			else {
				const {remarkLines} = await import('../report/remarks.ts');
				context.out(remarkLines(outside, context.columns, sayIn(profile, unit)).join('\n').trimStart());
			}

			return exitCode.no;
		}

		const answer = answerOf(context, profile, space);
		const {rows, question, chosen} = answer;
		const ear = rows[chosen ?? 0]!.places.seats[0]!;
		const moves = withSpeakerMoves(answer.moves, profile, shape, speakers, ear);
		const measures = rows.map(({places}) => planMeasures(profile, shape, speakers, places));
		const findings = [...answer.findings, ...space.findings];
		if (context.flags.json)
			context.out(
				saidJson(
					{
						shape,
						seats: space.seats,
						question,
						arrangements: rows.map(
							({name, arrangement: {seatsDb: _, ...arrangement}, against, againstAbove}, i) => ({
								...name,
								...arrangement,
								against,
								againstAbove,
								// Of another wall only its bass is compared.
								...(name.kind !== 'wall' && {measures: measures[i]}),
							}),
						),
						moves,
						findings,
					},
					inMetres,
				),
			);
		else {
			const {arrangementText} = await import('../report/arrangement/text.ts');
			context.out(
				arrangementText(profile, rows, {
					question,
					chosen,
					width: context.columns,
					seats: space.seats.length,
					contents: rows.map(row => rowContents(space, row)),
					measures,
					shape,
					moves,
					findings,
				}),
			);
		}

		if (context.flags.write !== undefined) await writePlan(context, profile, space, moves);
		return hasProblem(findings) ? exitCode.no : exitCode.fine;
	},
};

function answerOf(context: CommandContext, profile: Profile, space: ArrangementSpace): ArrangementAnswer {
	const {move, spots, search, sub} = context.flags;
	const unit = profile.lengthUnit ?? 'm';
	const texts = [move ?? []].flat() as string[];
	const asked = [texts.length > 0, spots !== undefined, search === true].filter(Boolean).length;
	if (asked > 1) throw new Trouble('arrange: one question at a time: --move, --spots or --search.');
	if (search) {
		const bench = planBench(space);
		const now = bench.judge({
			subs: space.subs.map(({at}) => at),
			seats: space.seats.map(({at}) => at),
			lifted: 0,
		});
		return ladderAnswer(space, now, driven(searchPlan(profile, space, bench, now), context));
	}

	if (texts.length > 0) {
		const read = readMoves(texts, unit);
		if (!read.ok) throw new Trouble(`arrange: ${read.why}`);
		const ids = movableIds(space);
		const unknown = read.moves.find(({id}) => !ids.includes(id));
		if (unknown)
			throw new Trouble(`arrange: “${unknown.id}” cannot be moved here. Expected one of ${ids.join(', ')}.`);
		const asked = whatIf(space, read.moves, texts.join(' '));
		if ('outside' in asked)
			throw new Trouble(
				`arrange: ${listed(asked.outside.map(id => nameOf(profile, id)))} would then stand outside the walls or above the ceiling. Move it by less.`,
			);
		return asked;
	}

	if (spots === undefined) return asItStands(space);
	const read = readSpots(String(spots), space.room.shape, unit);
	if (!read.ok) throw new Trouble(`arrange --spots: ${read.why}`);
	const ids = space.subs.map(one => one.id);
	const id = sub === undefined ? ids[0] : String(sub);
	if (id === undefined || !ids.includes(id))
		throw new Trouble(`arrange --sub: “${id}”, expected one of ${ids.join(', ')}.`);
	return whichSpot(space, id, read.spots);
}

/** Runs a search to its end and says how far it is, where somebody sits at a terminal. */
function driven(
	work: Generator<PlanSearchStep, readonly ArrangementRow[]>,
	{isTerminal, say}: Pick<CommandContext, 'isTerminal' | 'say'>,
): readonly ArrangementRow[] {
	let told = 0;
	for (;;) {
		const next = work.next();
		if (next.done) return next.value;
		if (next.value.what !== 'places') continue;
		const quarter = Math.floor((4 * next.value.done) / next.value.of);
		if (isTerminal && quarter > told) {
			told = quarter;
			say(`${25 * quarter} % of ${next.value.of} arrangements looked at`);
		}
	}
}

async function lengthFlag({flags}: CommandContext, {lengthUnit = 'm'}: Profile): Promise<number | undefined> {
	if (flags.seat === undefined) return undefined;
	const {readLength} = await import('../profile/units/length.ts');
	const read = readLength(String(flags.seat), lengthUnit);
	if (read.kind !== 'ok')
		throw new Trouble(`arrange --seat: “${String(flags.seat)}” is no length. Expected such as 3.9m.`);
	return read.metres;
}

async function writePlan(
	context: CommandContext,
	profile: Profile,
	space: ArrangementSpace,
	moves: readonly ThingMove[],
): Promise<void> {
	if (moves.length === 0) {
		context.say('Nothing has to be carried, so nothing is planned and no profile was written.');
		return;
	}

	const {createProfileFile} = await import('../platform/profiles/save.ts');
	const {newProfilePath} = await import('../platform/profiles/newPath.ts');
	const name = String(context.flags.write);
	const path = newProfilePath(folderOf(context), name);
	const places = plannedPlaces(profile, space, moves).map(({id, at: [xMetres, yMetres, zMetres]}) => ({
		id,
		xMetres,
		yMetres,
		zMetres,
	}));
	const {planTolerance} = await import('../study/arrangement/tolerance.ts');
	const at = (id: string, from: Vector) => moves.find(move => move.id === id)?.to ?? from;
	const tolerance = planTolerance(planBench(space), {
		subs: space.subs.map(sub => at(sub.id, sub.at)),
		seats: space.seats.map(seat => at(seat.id, seat.at)),
	});
	const next = moves.reduce((old, {id}) => withMoved(old, id), profile);
	createProfileFile(path, {...next, name, planned: {places, ...tolerance}});
	context.say(`“${name}” holds the plan. Its stop Tape begins with marking these places on the floor.`);
}
