/*
 * Limits that no standard sets: our own choices, with the reason beside each.
 */

/**
 * From this weight on, a loudspeaker overhead is asked to have a second support. No clause demands one in a home;
 * good practice does for what is heavy, because board and clamps alone carry it. 5 kg (11 lb) is our own choice: the
 * usual ceiling loudspeaker is lighter.
 */
export const SECOND_SUPPORT_FROM_KG = 5;

/**
 * Allowed either side of a direction that ITU-R BS.2051 fixes at one value: a box room cannot always give it. Our
 * own choice where the file says nothing.
 */
export const USUAL_TOLERANCE_DEG = 5;

/** Higher than this, what is left and right of a seat hardly differs: the azimuth is not compared. Our own choice. */
export const AZIMUTH_COMPARED_TO_DEG = 85;

/**
 * What sharing a line from front to back may cost the worst of the overhead loudspeakers on it, where the file says
 * nothing. A line that is off by 1/8 in shows (site advice); a degree is not heard. Our own choice.
 */
export const USUAL_LINE_DEG = 1;

/**
 * What a place over a joint of the board counts as, in degrees from the preferred direction, where the file says
 * nothing: a place off the joint is taken where it is not more than this further off. The joint is a matter of
 * workmanship and the direction one of hearing; two degrees are not heard, and an opening's width off the joint is
 * seldom more. Our own choice.
 */
export const USUAL_JOINT_DEG = 2;

/**
 * So many of the openings that are too near to one are told one by one, the nearest of them; of the others one finding
 * tells how many they are. So it is with obstructions that an opening meets and members that it cuts. In rows that are
 * set too close eight stand round each, and all of these are told: more come from a slip that many share (one position
 * copied to hundreds, feet typed for inches), and two hundred thousand pairs are read by nobody. Our own choice.
 */
export const TOLD_ONE_BY_ONE = 8;

/**
 * So many areas may lie over each other in one place: music, announcements and alarms may each have loudspeakers of
 * their own over the same floor, and one is left for what else there is. More are a slip, such as a list of areas none
 * of which says its corners; the loudspeakers of each would be pushed ever further from where its pattern wants them.
 * Our own choice.
 */
export const AREAS_OVER_EACH_OTHER = 4;

/**
 * So often at most what is beside a row of marks is looked at for the nearest clear centres of one room: beside best
 * places that took all they may, and where none were looked for. Past it they are not told any more. A house takes some
 * thousands, a hall of 400 loudspeakers all of which stand on joists 180,000: past it are only rooms that nobody builds,
 * and their answer too is to come within seconds. Our own choice.
 */
export const MOST_LOOKS_FOR_FIXES = { besideBest: 220_000, alone: 600_000 } as const;

/**
 * So many looks at most go into the ways of a room's cables: a stretch of a lane, a corner or a box beside it is one. 500
 * cables among 250 obstructions in a hall take two million and a half, examples some tens of thousands. Our own choice.
 */
export const MOST_LOOKS_FOR_WAYS = 3_000_000;

/**
 * So many looks at most go into the best places of a room: to know what its models may not meet, to find the best for
 * each of its loudspeakers alone, then to keep them apart and on lines. What may come into a box of marks is one: 500 in a
 * hall take two and a half million, examples some tens of thousands. Our own choice.
 */
export const MOST_LOOKS_FOR_PLACES = { grounds: 800_000, alone: 1_500_000, apart: 2_500_000 } as const;

/**
 * So many looks at most go into filling the areas of a room: 486 loudspeakers in a hall with 250 obstructions take a
 * hundred and twenty thousand. Our own choice.
 */
export const MOST_LOOKS_FOR_AREAS = 600_000;

/**
 * So many looks at most go into the best places of other bays than those that a room's loudspeakers are in: beside best
 * places that took all they may, and where none were looked for. 4 other bays of each of 11 loudspeakers in a room take
 * 1.4 million, of one in a hall with 500 a hundred and fifty thousand. Our own choice.
 */
export const MOST_LOOKS_FOR_OTHER_BAYS = { besideBest: 1_000_000, alone: 6_000_000 } as const;

/**
 * Where there are more members, edges and obstructions on a surface, times the kinds of loudspeakers in it, it is not
 * drawn over what those may slide. A ceiling of 100 m with all the obstructions and pieces that a file may have comes to
 * 1,100, and ten kinds in it to 11,000; past it are only slips, such as a spacing of 10 mm. Our own choice.
 */
export const MOST_TO_SLIDE_AMONG = 20_000;
