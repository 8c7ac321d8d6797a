import {expect, test} from 'vitest';
import {checkProfile, problemText} from '../../../source/profile/file/parse.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {sampleProfile} from '../sample.ts';

function problemsAfter(change: (profile: Profile) => void): string[] {
	const profile = sampleProfile();
	change(profile);
	return checkProfile(profile).map(problem => problemText(problem));
}

test('the sample breaks no rule', () => expect(problemsAfter(() => {})).toEqual([]));

test.each<[string, (profile: Profile) => void, RegExp]>([
	[
		'a channel given twice',
		profile => profile.channels.push({id: 'FL'}),
		/^channels\[3\]\.id: "FL", expected each channel once/,
	],
	[
		'a seat given twice',
		profile => profile.seats.push({id: 'left', name: 'x'}),
		/^seats\[2\]\.id: "left", expected each seat once/,
	],
	[
		"a sub with a seat's id",
		profile => profile.subs!.push({id: 'left', name: 'x', fedBy: 'LFE1'}),
		/^seats\[1\]\.id: "left".*A sub has this id already/,
	],
	[
		"a seat with a channel's id",
		profile => profile.seats.push({id: 'FR', name: 'x'}),
		/^seats\[2\]\.id: "FR".*A channel has this id already/,
	],
	[
		'a seat named screen',
		profile => profile.seats.push({id: 'screen', name: 'x'}),
		/“screen” has a meaning of its own/,
	],
	[
		'a seat named ceiling',
		profile => profile.seats.push({id: 'ceiling', name: 'x'}),
		/“ceiling” has a meaning of its own/,
	],
	[
		'no reference seat',
		profile => delete profile.seats[0]!.reference,
		/^seats: "no reference seat", expected exactly one/,
	],
	['two reference seats', profile => (profile.seats[1]!.reference = true), /2 reference seats: sofa, left/],
	[
		'a mistyped tape end',
		profile => (profile.tape![0]!.to = 'FLL'),
		/^tape\[0\]\.to: "FLL".*Did you mean FL\?/,
	],
	['a mistyped wall', profile => (profile.tape![2]!.to = 'wall:lfet'), /Did you mean wall:left\?/],
	[
		'a channel that the profile lacks',
		profile => (profile.tape![0]!.to = 'TpFL'),
		/The channel TpFL is not in this profile/,
	],
	[
		'a reading to itself',
		profile => (profile.tape![0]!.to = 'sofa'),
		/^tape\[0\]: "from sofa to sofa", expected two different ends/,
	],
	[
		'an unknown meter source',
		profile => (profile.meter![1]!.source = 'sub2'),
		/^meter\[1\]\.source: "sub2".*Did you mean sub1\?/,
	],
	[
		'an unknown source among several',
		profile => (profile.meter![2]!.source = ['FL', 'FX']),
		/^meter\[2\]\.source\[1\]: "FX"/,
	],
	[
		'background among several',
		profile => (profile.meter![2]!.source = ['FL', 'background']),
		/^meter\[2\]\.source\[1\]: "background"/,
	],
	['a source twice', profile => (profile.meter![2]!.source = ['FL', 'FL']), /expected each source once/],
	[
		'an unknown seat',
		profile => (profile.meter![0]!.seat = 'FL'),
		/^meter\[0\]\.seat: "FL", expected a seat/,
	],
	[
		'a band the wrong way round',
		profile => (profile.meter![1]!.signal = {kind: 'pink', fromHertz: 2000, toHertz: 500}),
		/fromHertz: 2000, expected less than toHertz, 500/,
	],
	[
		'an unknown set in force',
		profile => (profile.meter![1]!.inForce = 'odl'),
		/^meter\[1\]\.inForce: "odl".*Did you mean old\?/,
	],
	[
		'a set given twice',
		profile => profile.settings!.push({id: 'old', origin: 'entered', channels: {}}),
		/^settings\[1\]\.id: "old"/,
	],
	[
		'an output that the processor lacks',
		profile => (profile.subs![0]!.processorOutput = 'C'),
		/^subs\[0\]\.processorOutput: "C".*Did you mean [AB]\?/,
	],
	[
		'an output without a processor',
		profile => delete profile.bassProcessor,
		/Describe the bass processor, or leave the output out/,
	],
	[
		'a sub fed by a channel that is not there',
		profile => (profile.subs![0]!.fedBy = 'LFE2'),
		/^subs\[0\]\.fedBy: "LFE2"/,
	],
	[
		'a trim range the wrong way round',
		profile => (profile.receiver!.trim.minimumDb = 13),
		/^receiver\.trim\.minimumDb: 13, expected at most the maximum/,
	],
	[
		'a distance range the wrong way round',
		profile => Object.assign(profile.receiver!.timing, {minimumMetres: 20}),
		/^receiver\.timing\.minimumMetres/,
	],
	[
		'a delay range the wrong way round',
		profile => (profile.bassProcessor!.delay.minimumMs = 51),
		/^bassProcessor\.delay\.minimumMs/,
	],
	[
		'crossovers out of order',
		profile => (profile.receiver!.crossover.choicesHertz = [80, 60]),
		/choicesHertz\[1\]: 60, expected more than the 80 before it/,
	],
	[
		'a crossover twice',
		profile => (profile.receiver!.crossover.lfeLowPassChoicesHertz = [80, 80]),
		/expected each frequency once/,
	],
	[
		'a processor output twice',
		profile => (profile.bassProcessor!.outputs = ['A', 'A']),
		/^bassProcessor\.outputs\[1\]: "A"/,
	],
	[
		'a curve of an unknown source',
		profile => (profile.responses![0]!.source = 'FC'),
		/^responses\[0\]\.source: "FC"/,
	],
])('%s is found', (_, change, words) => {
	const problems = problemsAfter(change);
	expect(problems).toHaveLength(1);
	expect(problems[0]).toMatch(words);
});
