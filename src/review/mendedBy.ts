/** For each check of the estimate the inputs that put it right, the likeliest first, and what kind of change would do. */
import type { Named } from "../formula/build";
import type { EstimateCheck } from "../workbooks/multiRoom/checks";
import { estimate } from "../workbooks/multiRoom/names";
import { taxClass, taxes } from "../workbooks/multiRoom/names/site";
import { made } from "../workbooks/multiRoom/names/terms";

export interface MendStep {
  /** A column that is filled, or a field. */
  readonly at: Named & { readonly words: { readonly head: string } | { readonly label: string } };
  /** A clause: what to do there. */
  readonly does: string;
  /** In the first row of its list that is free, or only where the list is empty. */
  readonly row?: "new" | "only when empty";
}

const { rooms, branches, heads, dishes, feeders, site, slots, units, supplies, cables, passives, plates } =
  estimate;
const { receivers, resistors, routes, labour, fittings, bonds, crew, sites, places, options, discount } =
  estimate;
const { types, assumptions, exclusions, letterhead, feeds, rests } = estimate;

const at = (where: MendStep["at"], does: string, row?: MendStep["row"]): MendStep => ({
  at: where,
  does,
  ...(row && { row }),
});

/** More level, or volts, along the way to it. */
const LESS_LOSS: readonly MendStep[] = [
  at(rooms.run, "a shorter run, if it was measured too long"),
  at(rooms.cable, "a cable that loses less"),
  at(rooms.from, "a device nearer to the head unit, or one with fewer ports"),
  at(rooms.port, "a port that loses less"),
  at(rooms.plate, "a wall plate that loses less"),
  at(rooms.split, "a splitter that loses less, or none"),
  at(branches.device, "a device that loses less or has fewer ports, or an amplifier"),
  at(branches.length, "a shorter lead to the device"),
  at(branches.cable, "a cable that loses less up to the device"),
  at(branches.from, "another place in the distribution, nearer to the head unit"),
  at(heads.length, "a shorter cable from the head unit"),
  at(heads.cable, "a cable that loses less from the head unit"),
  at(heads.type, "a head unit with more output"),
];

const MORE_VOLTS: readonly MendStep[] = [
  at(heads.cable, "a cable with less resistance: copper, not copper-clad steel"),
  at(heads.length, "a shorter cable, or the head unit nearer to its supply"),
  at(heads.supply, "a supply with more volts, or one that stands nearer"),
  at(branches.cable, "a cable with less resistance on the way of the power"),
  at(branches.length, "a shorter lead on the way of the power"),
  at(branches.device, "a device that passes power with less drop"),
  at(heads.type, "a head unit that takes less current or is content with fewer volts"),
  at(rooms.cable, "a cable with less resistance to the outlet from which it is powered"),
  at(rooms.run, "a shorter run to that outlet"),
  at(cables.loop, "its loop resistance, from the maker's sheet"),
];

const PLAN_OF_DISHES: readonly MendStep[] = [
  at(dishes.slots, "the slot among those of a dish that can receive it"),
  at(dishes.name, "a dish of its own for the slot", "new"),
  at(slots.slot, "another slot, if nobody wants this one"),
];

const CLEAR_SIGHT: readonly MendStep[] = [
  at(dishes.location, "another place for the dish, past the obstacle"),
  at(dishes.height, "a higher mounting"),
  at(dishes.mounting, "another mounting"),
  at(dishes.obstacle, "the obstacle as it was measured, if it was not"),
  at(slots.obstacle, "the obstacle as it was measured, if it was not"),
];

const PRICE_OF: readonly MendStep[] = (
  [cables, passives, units, supplies, plates, feeds, resistors, fittings] as const
).flatMap(({ until, priced }) => [
  at(until, "the day until which the supplier holds the price, once he has said it"),
  at(priced, "the day on which the price was asked"),
]);

export const MENDED_BY: Readonly<Partial<Record<EstimateCheck, readonly MendStep[]>>> = {
  "outlets to price": [at(rooms.outlet, "the outlets of the job, a row each", "new")],
  "dishes wrong": [
    at(dishes.size, "its diameter"),
    at(dishes.slots, "slots that Site lists"),
    at(dishes.feed, "a feed of Parts"),
    at(site.dish, "the usual diameter"),
  ],
  "feeders wrong": [
    at(feeders.from, "a dish or a head unit that is listed"),
    at(feeders.to, "a head unit that is listed"),
    at(feeders.slot, "a slot that the dish receives"),
    at(feeders.quantity, "as many cables as the head unit takes"),
    at(feeders.cable, "a cable of Parts"),
  ],
  "head units wrong": [
    at(heads.type, "a kind of Parts"),
    at(heads.supply, "a supply of Parts"),
    at(heads.cable, "a cable of Parts"),
    at(heads.length, "its length"),
    at(heads.dish, "a dish that is listed"),
    at(feeders.to, "cables from a dish or another head unit to it"),
  ],
  "branches unfed": [
    at(branches.from, "a head unit or a device that is listed, and not one behind it"),
    at(branches.port, "a port that is free"),
    at(branches.device, "a device of Parts with enough ports"),
    at(branches.cable, "a cable of Parts"),
  ],
  "outlets unfed": [
    at(rooms.from, "a device, a head unit or an outlet with a way through that is listed, with a port free"),
    at(rooms.port, "a port that is free"),
    at(branches.device, "a device with more ports above it"),
    at(rooms.run, "its length"),
    at(rooms.cable, "a cable of Parts"),
    at(rooms.plate, "a wall plate of Parts"),
  ],
  "outlets named twice": [at(rooms.outlet, "a name of its own, or clear the row that was pasted twice")],
  "outlets of head units": [at(rooms.from, "a head unit, or a device behind one, that is listed")],
  "level too low": LESS_LOSS,
  "under the design floor": LESS_LOSS,
  "low at longest lengths": [
    at(rooms.longest, "a longest run that is measured, not guessed"),
    ...LESS_LOSS,
    at(types.longest, "a longest run that is measured, for all rooms of the type"),
    at(site.run_tolerance, "a tolerance that fits how the runs were measured"),
  ],
  "level too high": [
    at(rooms.from, "a device that loses more, or a port of a tap"),
    at(branches.device, "a tap or a splitter that loses more, an attenuator, or no amplifier"),
    at(rooms.port, "a port that loses more"),
    at(rooms.plate, "a wall plate that loses more"),
    at(heads.type, "a head unit with less output"),
    at(passives.gain_high, "the gain of the amplifier, from the maker's sheet or as it is set"),
  ],
  "slope too steep": [
    at(branches.device, "an equaliser before it"),
    at(rooms.cable, "a cable that loses less at the highest frequency"),
    at(rooms.run, "a shorter run"),
    at(branches.cable, "a cable that loses less at the highest frequency, up to the device"),
    at(branches.length, "a shorter lead to the device"),
    at(passives.gain_high, "an amplifier whose gain rises with frequency, as it is set"),
    at(heads.cable, "a cable that loses less at the highest frequency, from the head unit"),
    at(heads.type, "a head unit whose output rises with frequency"),
  ],
  "difference between outlets": [
    at(branches.device, "taps that even out near and far"),
    at(rooms.from, "another device for the nearest or the farthest"),
    at(rooms.cable, "a cable that loses less for the farthest"),
  ],
  "carrier to noise too low": [
    at(dishes.size, "a larger dish"),
    at(site.dish, "a larger dish, where its row names no size"),
    at(dishes.feed, "a feed with less noise"),
    at(dishes.off_focus, "a smaller loss beside the focus, if it was not measured"),
    at(branches.device, "an amplifier with less noise, or one farther up"),
    at(rooms.cable, "more level: what is too weak adds noise"),
    at(slots.modulation, "the modulation that the slot really has"),
    at(slots.eirp, "the EIRP that holds at the place"),
    at(site.availability, "an availability that the customer will pay for"),
  ],
  "carrier to noise not asked": [
    at(slots.eirp, "the EIRP at the place"),
    at(slots.symbol_rate, "the symbol rate"),
    at(slots.modulation, "the modulation and code"),
  ],
  "carrier to noise not judged": [
    at(units.noise, "the noise figure from the maker's sheet"),
    at(passives.noise, "the noise figure of the amplifier"),
    at(feeds.noise, "the noise figure of the feed"),
    at(receivers.noise, "the noise figure of the receiver"),
  ],
  "outlets dead": [
    at(rooms.from, "a device through which commands pass"),
    at(rooms.plate, "a wall plate through which commands pass"),
    at(branches.device, "a device that passes power and commands from its ports"),
    at(receivers.standard, "a receiver that commands as the head unit hears it"),
    at(heads.type, "a kind of head unit that hears the receiver"),
    at(heads.supply, "a supply that leaves the commands of the receivers to be heard"),
    at(rooms.receiver, "a kind of receiver that the head unit hears"),
  ],
  "commands not judged": [at(units.standard, "how it is commanded, from the maker's sheet")],
  "applied volts too high": [
    at(branches.device, "a device that passes power towards the head unit only"),
    at(heads.supply, "a supply or an inserter whose other side passes none, or one with fewer volts"),
    at(rooms.from, "a device without power at its ports"),
    at(passives.power, "which of its ports pass power, from the maker's sheet"),
    at(supplies.other_side, "no, if the supply passes none to the other side"),
    at(rooms.plate, "a wall plate that passes no power to the receiver"),
    at(receivers.bears, "what the receiver bears, from the maker's sheet"),
  ],
  "connectors too few": [
    at(rooms.split, "what splits the cable at the outlet"),
    at(rooms.plate, "a wall plate with more connectors"),
    at(rooms.quantity, "fewer receivers there"),
  ],
  "through ports open": [
    at(site.closes, "the end resistor that closes every open port"),
    at(rooms.plate, "a single outlet at the end of the line"),
    at(branches.device, "a device without a way through at the end of the line"),
    at(rooms.from, "the next outlet on the way through"),
  ],
  "resistors on power": [
    at(site.closes, "an end resistor that blocks power"),
    at(resistors.blocks, "yes, if it does"),
  ],
  "limits of level": [at(site.level_low, "47 dBµV or more"), at(site.level_high, "77 dBµV or less")],
  "splitters too good": [
    at(passives.port_low, "the loss from the maker's sheet"),
    at(passives.port_high, "the loss from the maker's sheet"),
    at(passives.ways, "its ways"),
  ],
  "losses swapped": [
    at(passives.port_low, "the smaller of the two losses"),
    at(passives.port_high, "the larger of the two losses"),
    at(passives.through_low, "the loss through, not that of a port"),
    at(plates.loss_low, "the smaller of the two losses"),
    at(plates.loss_high, "the larger of the two losses"),
  ],
  "runs out of range": [
    at(rooms.run, "a run between its shortest and its longest"),
    at(rooms.shortest, "a shortest run that is not longer than the run"),
    at(rooms.longest, "a longest run that is not shorter than the run"),
  ],
  "outlets of a room": [
    at(types.outlets, "as many outlets as its rooms have"),
    at(rooms.room, "the room in which it is"),
    at(rooms.type, "the type that the room has"),
  ],
  "types unused": [at(rooms.type, "the type, in the rows of its rooms"), at(types.name, "clear the row")],
  "no user band": [
    at(heads.type, "a head unit with more user bands or outputs"),
    at(rooms.from, "another output or head unit that has bands left"),
    at(branches.from, "another output or head unit for the device and all behind it"),
    at(branches.port, "another output of the head unit"),
    at(rooms.kept, "other bands to keep, or none"),
    at(rooms.quantity, "fewer receivers"),
    at(rooms.receiver, "a kind of receiver with fewer tuners"),
    at(units.plan, "the band plan that the head unit has"),
    at(units.bands, "how many user bands it really has, from the maker's sheet"),
    at(units.outputs, "how many outputs it really has, from the maker's sheet"),
    at(heads.id, "a further head unit, with a row of its own", "new"),
  ],
  "short of volts": MORE_VOLTS,
  "amplifiers short of volts": [
    at(branches.device, "an inserter before the amplifier, or an amplifier that is content with fewer volts"),
    at(branches.from, "a place nearer to the supply"),
    at(branches.cable, "a cable with less resistance up to it"),
    at(branches.length, "a shorter lead"),
    at(heads.supply, "a supply with more volts"),
    at(passives.least, "its least volts, from the maker's sheet"),
  ],
  "feeds short of volts": [
    at(feeders.length, "shorter cables to the dish"),
    at(feeders.cable, "a cable with less resistance to the dish"),
    at(heads.type, "a head unit that powers its feed"),
    at(dishes.feed, "a feed that takes less current, or is content with fewer volts"),
    at(heads.supply, "a supply with more volts"),
  ],
  "supply overloaded": [
    at(heads.supply, "a supply that gives more current"),
    at(heads.type, "a head unit that takes less"),
    at(branches.device, "an inserter of its own for the amplifier behind it, or fewer amplifiers"),
    at(supplies.amps, "its greatest current, from the maker's sheet"),
  ],
  "devices overloaded": [
    at(branches.device, "a device that bears more current"),
    at(branches.from, "a way past it for the power"),
    at(heads.supply, "a supply that stands on the other side of it"),
    at(passives.amps, "its greatest current, from the maker's sheet"),
  ],
  "amplifiers overdriven": [
    at(branches.device, "an amplifier with less gain or more output, or an attenuator before it"),
    at(branches.from, "a place farther from the head unit"),
    at(heads.type, "a head unit with less output"),
    at(passives.most_output, "its greatest output, from the maker's sheet"),
  ],
  "inputs out of range": [
    at(feeders.length, "shorter or longer cables from the dish"),
    at(feeders.cable, "a cable that loses less or more"),
    at(feeders.from, "another head unit or dish to come from"),
    at(dishes.feed, "a feed with more or less gain"),
    at(dishes.size, "a larger or smaller dish"),
    at(heads.type, "a kind with other limits at its inputs"),
  ],
  "supply unused": [
    at(heads.supply, "clear it, or a head unit that needs it"),
    at(branches.device, "clear the row, or a place where its power is wanted"),
  ],
  "slots without dish": PLAN_OF_DISHES,
  "beam obstructed": CLEAR_SIGHT,
  "dish obstructed": CLEAR_SIGHT,
  "slots to look at": [at(slots.slot, "the slots wanted", "new")],
  "prices expired": PRICE_OF,
  "prices run out": [...PRICE_OF, at(site.until, "a quote that is valid no longer than its prices")],
  "prices of the future": [...PRICE_OF, at(site.date, "the day of the quote")],
  "days of validity": [
    at(site.until, "a day after that of the quote"),
    at(site.date, "the day of the quote"),
  ],
  "hours of labour": [
    at(labour.minutes, "the minutes that each piece of work takes"),
    at(labour.per_outlet, "how often it is done for each outlet"),
    at(routes.minutes, "the minutes for each metre or foot"),
    at(site.usual_route, "the route of cables that name none"),
  ],
  "minutes out of range": [
    at(labour.low, "the shortest of the three"),
    at(labour.high, "the longest of the three"),
    at(labour.minutes, "minutes between the two"),
    at(routes.low, "the shortest of the three"),
    at(routes.high, "the longest of the three"),
  ],
  "cables without route": [
    at(site.usual_route, "the route of cables that name none"),
    at(rooms.route, "how the cable runs"),
    at(branches.route, "how the lead runs"),
    at(heads.route, "how the cable runs"),
    at(feeders.route, "how the cables run"),
    at(routes.minutes, "the minutes that it takes"),
  ],
  "work uncounted": [
    at(labour.per_outlet, "how often it is done for each outlet, device, head unit, floor, day or job"),
    at(labour.piece, "what it is done for each of"),
    at(fittings.per_outlet, "how many go to each outlet, device, head unit or job"),
    at(fittings.piece, "what one goes to each of"),
  ],
  "runs not planned": [
    at(rooms.run, "a run no longer than what its reel holds"),
    at(rooms.longest, "a longest run that a reel holds"),
    at(cables.reel, "a longer reel"),
    at(rooms.cable, "a cable on longer reels"),
    at(heads.length, "a cable no longer than its reel"),
    at(branches.length, "a lead no longer than its reel"),
    at(site.slack, "less slack, where the runs were measured"),
    at(site.waste, "less waste, where the runs were measured"),
    at(site.cut_at, "the length at which runs are cut"),
    at(rests.length, "what is really left in stock"),
  ],
  "parts without supplier": (
    [cables, passives, units, supplies, plates, feeds, resistors, fittings] as const
  ).map(({ supplier }) => at(supplier, "from whom it is bought")),
  "days too few": [
    at(crew.days, "more days, or blank: they are then counted from the hours"),
    at(crew.hours, "longer days"),
    at(labour.minutes, "minutes that fit the work"),
  ],
  "nothing left of a day": [
    at(crew.hours, "longer days"),
    at(labour.per_day, "less work that is done each day"),
  ],
  "site costs out of range": [
    at(sites.cost, "a cost between its lowest and highest"),
    at(sites.low, "the lowest of the three"),
    at(sites.high, "the highest of the three"),
  ],
  "hire longer than the job": [
    at(sites.days, "no more days than the crew is there"),
    at(crew.days, "as many days as the crew is there"),
  ],
  "costs of no day": [
    at(crew.hours, "the hours of a day, so that days can be counted"),
    at(crew.days, "the days on site"),
    at(sites.per, "the job, where it is not paid by the day"),
  ],
  "places without outlets": [
    at(places.floor, "a floor as Rooms names it"),
    at(places.room, "a room as Rooms names it"),
  ],
  "places twice": [at(places.floor, "one row for each place"), at(places.factor, "one difficulty for it")],
  "discount twice": [
    at(discount.sum, "a sum, no more than the price, or blank"),
    at(discount.share, "a share, or blank"),
    at(discount.reason, "why it is given"),
  ],
  "price after discount": [
    at(discount.sum, "a smaller discount"),
    at(discount.share, "a smaller discount"),
    at(site.margin, "more margin to give away"),
  ],
  "options without a cost": [
    at(made.part, "a part of Parts, as it is called there"),
    at(made.each, "what one costs"),
    at(options.each, "the price at which it is sold"),
    at(made.quantity, "how many of it"),
    at(made.hours, "the hours that it takes"),
  ],
  "alternates together": [
    at(options.chosen, "yes for one of them only"),
    at(options.instead, "what each of them takes the place of"),
  ],
  "terms empty": [
    at(assumptions.text, "what the price takes for granted", "only when empty"),
    at(exclusions.text, "what is not included", "only when empty"),
    at(letterhead.line, "who makes the offer", "only when empty"),
  ],
  "measured off prediction": [
    at(rooms.built_low, "the reading again, at the lowest frequency"),
    at(rooms.built_high, "the reading again, at the highest frequency"),
    at(rooms.run, "the run as it was laid"),
    at(rooms.cable, "the cable as it was laid"),
    at(rooms.plate, "the wall plate as it was fitted"),
    at(rooms.from, "what it is connected to"),
  ],
  "conductors to look at": [
    at(bonds.size, "the cross-section that the local code asks for"),
    at(bonds.kind, "the kind of conductor"),
    at(bonds.length, "its length"),
  ],
  "conductors listed": [
    at(bonds.where, "the conductors of the job; the local code and a licensed person decide which", "new"),
  ],
  "dishes without a conductor": [
    at(bonds.dish, "the dish that a conductor bonds"),
    at(bonds.where, "a conductor for it; the local code and a licensed person decide which", "new"),
  ],
  "tax of the quote": [
    at(site.tax, "the usual rate"),
    at(taxClass.labour, "a class that the list has"),
    at(taxes.rate, "its rate"),
  ],
  "names twice": [
    at(cables.name, "names of their own on each list"),
    at(passives.name, "names of their own on each list"),
    at(branches.id, "names of their own on each list"),
  ],
};
