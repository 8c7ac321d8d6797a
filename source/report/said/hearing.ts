import {formatNumber} from '../../profile/units/decimalText.ts';
import type {HearingFacts} from '../../study/hearing/facts.ts';
import {db, ms} from './figures.ts';
import type {Sentences, Words} from './sentences.ts';

const again = 'Play and record it once more.';
const seconds = (value: number) => `${formatNumber(value, 0)} s`;
const octave = (hertz: number) => (hertz >= 1000 ? `${hertz / 1000} kHz` : `${hertz} Hz`);

export const hearingSentences: Sentences<HearingFacts> = {
	'heard-no-round': ({seconds: length}) => [
		`no round is in this recording of ${seconds(length)}`,
		'Start the recorder before the file is played, let it run to the end, and check that this is the right recording.',
	],
	'heard-file-unreadable': ({fault}) => faultWords(fault),
	'heard-clipped': ({samples}) => [
		`the recorder was overloaded: ${formatNumber(samples, 0)} samples stand at full scale`,
		'Turn the recorder’s input down, or the master volume by 6 dB, and play it again.',
	],
	'heard-cut': ({missingSeconds, missingChannels}, say) => [
		`the recording ends ${seconds(Math.max(1, missingSeconds))} before the file does`,
		missingChannels.length > 0
			? `Missing: ${missingChannels.map(id => say.name(id)).join(', ')}. ${again}`
			: 'All channels are in it; the check of the recorder’s gain at the end is missing.',
	],
	'heard-start-swallowed': ({missingBursts}) => [
		`the first ${missingBursts === 1 ? 'burst' : `${missingBursts} bursts`} of the opening did not sound`,
		'The player or receiver was still muted. Nothing that counts is lost.',
	],
	'heard-gain-control': ({raisedDb}) => [
		`the recorder changes its gain by itself: soft sounds come out ${db(raisedDb)} louder`,
		'Switch automatic gain off, or take a recorder app that leaves the level alone, and play it again.',
	],
	'heard-loudness-levelled': ({raisedDb}) => [
		`the player levels loudness: soft sweeps play ${db(raisedDb)} too loud`,
		'Switch off dynamic volume, night mode and loudness in player and receiver, and play it again.',
	],
	'heard-floor-gated': ({floorDbfs}) => [
		`the recorder shuts its noise off in the pauses (${formatNumber(floorDbfs, 0)} dBFS)`,
		'Decay is not to be trusted so. Switch noise suppression off, or take another recorder app.',
	],
	'heard-voice-mode': ({droppedDb}) => [
		`nothing above 8 kHz was recorded (${db(droppedDb, 0)} down): the recorder is in a voice mode`,
		'Record with a music or memo setting, not with a chat or telephone program, and play it again.',
	],
	'heard-samples-dropped': ({ms: lost, fromSeconds, toSeconds}) => [
		`${ms(Math.abs(lost), 2)} ${lost < 0 ? 'are missing' : 'were put in'} between ${seconds(fromSeconds)} and ${seconds(toSeconds)} of the file`,
		`The recorder or player lost its place. Close other programs. ${again}`,
	],
	'heard-clock-far': ({ppm}) => [
		`the recorder’s clock seems ${formatNumber(Math.abs(ppm), 0)} ppm off, more than any clock is`,
		'Something stretched the recording. Copy the original file, not one that a chat program passed on.',
	],
	'heard-folded': () => [
		'play through front left and right: the player sends two channels only',
		'Set the player to multichannel PCM, or take the file in two channels.',
	],
	'heard-upmixed': () => [
		'are heard in each other’s sweeps: a processing mode spreads channels over several speakers',
		'Choose the receiver’s direct mode, effects and upmixing off, and play it again.',
	],
	'heard-same-speaker': () => [
		'come out of the same speaker',
		'Check the player’s channel set-up and the plugs; a two-channel stereo mode does this too.',
	],
	'heard-lfe-silent': () => [
		'no bass in its sweep',
		'The player drops the LFE channel, or the subs are off: check both, and play it again.',
	],
	'heard-lfe-not-raised': ({lowDb}) => [
		`plays ${db(lowDb, 0)} softer against the mains’ low end than it should`,
		'Player or receiver does not raise the LFE channel by 10 dB; look for a setting of that kind. Blend and arrivals do not suffer.',
	],
	'heard-sub-slept': ({lowDb}) => [
		`its bass came up by ${db(lowDb, 0)} during the round: a sub woke up late`,
		'Set the sub’s standby to “on”, or play some bass first, and play it again.',
	],
	'heard-silent': () => ['silent: is it plugged in?', 'Its sweep cannot be told from the noise.'],
	'heard-disturbed': ({aboveDb}) => [
		`a noise ran into its sweep, ${db(aboveDb, 0)} above that of the others`,
		'A door, a voice, a car: this channel alone is wanted again.',
	],
	'heard-noisy-octaves': ({octavesHertz}) => [
		`too soft against the noise at ${octavesHertz.map(octave).join(', ')}`,
		'Decay there is left out. Raise the master volume or wait for a quieter hour.',
	],
	'heard-wanders': ({ms: size}) => [
		`its arrival wanders by ${ms(size, 2)} within one playing: a wireless link`,
		'No delay holds for it. Use a cable, or the link’s mode of fixed latency.',
	],
	'heard-later-stronger': ({laterMs, strongerDb}) => [
		`a second sound ${ms(laterMs)} after the first is ${db(strongerDb, 0)} stronger`,
		'As of a dipole, or a speaker that fires upwards; its tape distance decides which one counts.',
	],
	'heard-late': ({ms: size}) => [
		`sounds ${ms(size)} later than its distance says`,
		'A wireless link or processing on the way? Taken over, it counts as that line’s latency.',
	],
	'heard-early': ({ms: size}) => [
		`sounds ${ms(size)} earlier than its distance says`,
		'Check its tape distance, and whether its delay really stands in the box.',
	],
	'heard-one-late': ({ms: size}) => [
		`the first sounds ${ms(size)} later against the second than their distances say`,
		'Of two lines nobody can tell which is off: a link on the first, or a wrong distance or delay of either. Play the file with all channels, or check both.',
	],
	'heard-exchanged': () => [
		'sound from each other’s places',
		'Either their cables are exchanged, or the player exchanges the channels: swap the plugs, or its setting.',
	],
	'heard-twins-differ': () => [
		'push in opposite directions',
		'On one of the two, plus and minus are exchanged. Look at both ends of both cables, amplifier off.',
	],
	'heard-reversed': () => [
		'leads reversed, or built that way',
		'Swap plus and minus at one end, amplifier off, unless its maker turned it on purpose.',
	],
	'heard-not-taped': ({metres, sigmaMetres}, say) => [
		`not taped: by its sound ${say.length(metres)} away, give or take ${say.length(sigmaMetres)}`,
		'Taken over, it gets this distance until a tape says otherwise.',
	],
	'heard-microphone-moved': ({metres}, say) => [
		`the microphone moved by about ${say.length(metres)} between playings`,
		'Mains and subs cannot be told apart so. Put it on something that stays, and play both again.',
	],
	'heard-level-changed': ({changeDb}) => [
		`everything is ${db(Math.abs(changeDb))} ${changeDb < 0 ? 'softer' : 'louder'} than in the playing before`,
		'The master or the recorder’s gain was touched; it is calculated off.',
	],
	'heard-state-unknown': () => [
		'fits no state that was asked for',
		'It is kept as spare; play it again with one thing changed, as the sheet says.',
	],
	'heard-delay-other': ({ms: size, askedMs}) => [
		`the subs were moved by ${ms(size)}, not by the ${ms(askedMs)} asked for`,
		'To tell speakers and subs apart the delay must be known to 0.1 ms. Type it in as the sheet says, and play it again.',
	],
	'heard-apart-by-lfe': ({db: level, ms: time = 0}) => [
		`agrees with the speakers’ low ends within ${db(Math.max(0.1, Math.abs(level)))} and ${ms(Math.max(0.1, Math.abs(time)))}: speakers and subs are told apart from one playing`,
		'All subs then move together, and stay so only where one more playing hears the gain.',
	],
	'heard-lfe-disagrees': ({db: level, ms: time}) => [
		`does not agree with the speakers’ low ends: they are ${db(Math.abs(level))} ${level < 0 ? 'softer' : 'louder'} and ${time === undefined ? 'turned against it' : `${ms(Math.abs(time))} ${time < 0 ? 'earlier' : 'later'}`}`,
		'One low-pass or the LFE level is not what the profile says, so one playing does not tell speakers and subs apart. Correct it, or play once more with the subs changed, as the sheet says.',
	],
	'heard-no-microphone-curve': () => [
		'the recorder’s own colour is in these curves: no microphone curve was given',
		'Arrivals, polarity, decay and what changed from one playing to another do not suffer; level over frequency does, so levels of subs are left to the meter.',
	],
	'heard-low-cut': ({belowDb}) => [
		`bass reads ${db(belowDb, 0)} below the middle on every line: the recorder cuts it, as most phones do, or the subs are that soft; sub levels from it are worthless`,
		'The blend does not suffer. Level subs with a meter, or give the microphone’s curve.',
	],
};

type FileFault = HearingFacts['heard-file-unreadable']['fault'];

const copyAgain = 'Copy it again from the recorder, or record once more.';

/** What is wrong with the bytes of a recording. */
function faultWords(fault: FileFault): Words {
	switch (fault.code) {
		case 'noDecoder':
			return [
				'no recording that can be read',
				'WAV, m4a, ogg, opus, mp3 and flac are; save it as one of these.',
			];
		case 'noWave':
			return [`no WAV file: it begins with “${fault.begins}”`, copyAgain];
		case 'noFormat':
			return ['it does not say how its sound is stored', copyAgain];
		case 'shortFormat':
			return [
				`the part that says how its sound is stored has ${fault.bytes} bytes, 16 at least are expected`,
				copyAgain,
			];
		case 'compressed':
			return [
				`its sound is compressed (format ${fault.format}) inside a WAV file`,
				'Save it as plain WAV (PCM), m4a or flac.',
			];
		case 'noChannels':
			return ['it says that it has no channel', copyAgain];
		case 'wrongRate':
			return [
				`it says ${formatNumber(fault.sampleRateHz, 0)} samples a second, 4,000 to 1,000,000 are expected`,
				copyAgain,
			];
		case 'wrongBits':
			return [
				`its samples have ${fault.bits} bits${fault.isFloat ? ' as floats' : ''}; 8, 16, 24, 32 and floats of 32 and 64 can be read`,
				'Save it as 24-bit WAV.',
			];
		case 'wrongFrame':
			return [
				`its frames have ${fault.bytes} bytes where ${fault.expected} are expected`,
				'Save it again with another program as 24-bit WAV.',
			];
		case 'noData':
			return ['it holds no sound', copyAgain];
		case 'empty':
			return ['its sound has no samples', copyAgain];
	}
}
