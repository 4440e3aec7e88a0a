import type { Catalogue } from "./catalogue.ts";

/**
 * English sentences of every rule. Short words, short sentences. A danger always says what it would do in a real
 * house: shock or fire.
 */
export const en = {
  // Conductors
  short: {
    title: "Short circuit",
    variants: {
      "line-neutral": {
        what: "Line and neutral are joined: {causes}.",
        why: "In a real house a very large current would flow at once, with a flash and a fire danger, until the device cuts it off.",
        remedy: "Pull out the lead that joins line to neutral and put it on the right contact.",
      },
      "line-earth": {
        what: "Line and earth are joined: {causes}.",
        why: "In a real house a very large current would flow, and metal cases on this circuit could be live until the device cuts it off: shock and fire danger.",
        remedy: "Pull out the lead that joins line to earth and put it on the right contact.",
      },
    },
  },
  "neutral-earth": {
    title: "Neutral meets earth",
    variants: {
      joined: {
        what: "Neutral and earth are joined: {causes}.",
        why: "Return current would flow in the earth and in metal parts. The RCD would trip, or could fail to do its job: shock danger.",
        remedy: "Take the two apart. In a circuit neutral and earth never meet.",
      },
    },
  },
  "two-ways": {
    title: "Two ways are joined",
    variants: {
      line: {
        what: "The lines of {ways} meet in this wiring.",
        why: "With one device off, the other still feeds the circuit. Someone who thinks it is dead could get a shock.",
        remedy: "Keep each circuit on its own way. Move the cable that crosses over back to its own circuit.",
      },
      "ring-ends": {
        what: "One end of the ring is on one way and the other end on another: {ways}.",
        why: "With one device off, the other still feeds the ring. Someone who thinks it is dead could get a shock.",
        remedy: "Bring both ends of the ring back to the same way.",
      },
    },
  },
  "borrowed-neutral": {
    title: "Borrowed neutral",
    variants: {
      only: {
        what: "At {places} the line comes from one circuit and the neutral from another.",
        why: "With its own circuit off, the neutral can still be live through the other one: shock danger. An RCD would trip as well.",
        remedy: "Bring the neutral of the same circuit there, and take off the borrowed one.",
      },
      also: {
        what: "At {places} the neutral reaches its own circuit and another one too.",
        why: "Current would return by both. With one circuit off, the neutral can still be live: shock danger. An RCD would trip as well.",
        remedy: "Take off the neutral that leads to the other circuit.",
      },
    },
  },
  polarity: {
    title: "Crossed conductors",
    variants: {
      crossed: {
        what: "{from} is joined to {to}.",
        why: "A switch or a fuse could then cut the wrong conductor. Parts that look dead, or metal that people touch, could be live: shock danger.",
        remedy: "Swap the leads so that line meets line, neutral meets neutral and earth meets earth.",
      },
    },
  },
  "split-conductors": {
    title: "Conductors on different routes",
    variants: {
      split: {
        what: "Line, neutral and earth of one feed do not run together: {places}.",
        why: "Conductors that run together cancel each other's magnetic field. Apart they can heat steel around them, and nobody can trace them.",
        remedy:
          "Run line, neutral and earth of one feed side by side, from the same place to the same place.",
      },
    },
  },
  "cpc-missing": {
    title: "No protective conductor (earth)",
    variants: {
      missing: {
        what: "No earth reaches {places}.",
        why: "If a live part touched the metal there, the metal would stay live. Whoever touches it would get a shock.",
        remedy: "Bring the protective conductor (E) there from the way, without a gap.",
      },
    },
  },
  "conductor-missing": {
    title: "A conductor is missing",
    variants: {
      "neutral-live": {
        title: "No neutral, but live",
        what: "Line reaches {places}, but no neutral does.",
        why: "Nothing works there, so it looks dead. Yet it is live: shock danger.",
        remedy: "Bring the neutral (N) there from the way of its circuit.",
      },
      neutral: {
        title: "No neutral",
        what: "No neutral reaches {places}.",
        why: "Current needs a way back. Nothing can work there.",
        remedy: "Bring the neutral (N) there from the way of its circuit.",
      },
      line: {
        title: "No line",
        what: "No line reaches {places}.",
        why: "Nothing can work there.",
        remedy: "Bring the line (L) there from the way of its circuit.",
      },
    },
  },
  "wrong-side": {
    title: "Fed from the wrong side",
    reference:
      "The maker marks the supply and the load terminals. Regulation: BS 7671:2018, 134.1.1, asks you to follow the maker's instructions.",
    variants: {
      "fed-from-load": {
        what: "The feed lands on the load side of {place}.",
        why: "Supply and load are then the wrong way round. With the switch off or the fuse out, terminals that should be dead are still live.",
        remedy: "Put the feed on the supply side and what it feeds on the load side.",
      },
    },
  },
  "ring-through-fuse": {
    title: "Ring through a fuse",
    variants: {
      through: {
        what: "The ring goes in at the supply side of {place} and on from its load side.",
        why: "Part of the ring is then fed through a fuse. The two legs no longer share the load as they should, and the fuse can blow.",
        remedy: "Loop the ring through the supply side. Use the load side for what the fuse protects.",
      },
      parallel: {
        what: "The load side of {places} is fed from more than one place at once.",
        why: "With one fuse out, another feed keeps it live. The fuse protects nothing: shock and fire danger.",
        remedy: "Feed the load side from one fuse only.",
      },
    },
  },
  "not-served": {
    title: "No power there yet",
    reference: "It is what the task asks for.",
    variants: {
      "not-served": {
        what: "Power does not reach {places}.",
        why: "The task asks for it to work.",
        remedy: "Bring line, neutral and earth there from the circuit.",
        several: {
          what: "Power does not reach {places}.",
          why: "The task asks for them to work.",
        },
      },
    },
  },
  "outside-task": {
    title: "Outside the task",
    reference: "The task says which parts of the board it uses.",
    variants: {
      "outside-task": {
        what: "{place} goes to a part of the board that this task does not use.",
        why: "It may be a lead left over from earlier work.",
        remedy: "Take it out if you do not need it.",
      },
    },
  },
  "dead-end-lead": {
    title: "A lead that goes nowhere",
    variants: {
      live: {
        what: "{place} ends where nothing is fed, and it would be live.",
        why: "A live end that feeds nothing is forgotten, and then touched: shock danger.",
        remedy: "Take it out, or join it on to what it should feed.",
      },
      dead: {
        what: "{place} ends where nothing is fed.",
        why: "Nobody can tell what it is for.",
        remedy: "Take it out, or join it on to what it should feed.",
      },
      island: {
        what: "{places}: joined to each other, but to no way.",
        why: "No supply reaches this part of the board.",
        remedy: "Join it to the circuit, or take it out.",
      },
    },
  },
  "crowded-contact": {
    title: "Stacked plugs",
    variants: {
      stacked: {
        what: "More than one plug is on one contact: {places}.",
        why: "The board cannot tell which cable goes where. In one real terminal, too many conductors can work loose.",
        remedy: "Give each lead a contact of its own. Use another entry.",
      },
    },
  },
  "self-lead": {
    title: "A lead from a station to itself",
    variants: {
      loop: {
        what: "Both ends of {place} are in one station.",
        why: "It joins what is joined inside already, so it does nothing.",
        remedy: "Take it out, or take one end to the station you meant.",
      },
      bypass: {
        what: "{place} joins the supply side to the load side.",
        why: "The fuse or the switch inside is bypassed. It can cut nothing off: fire and shock danger.",
        remedy: "Take it out.",
      },
    },
  },

  // Shape
  "ring-open": {
    title: "The ring is open",
    variants: {
      open: {
        what: "The ring does not close[ ({cores})]: {places}.",
        why: "A ring shares its load between two legs. With line or neutral open, one leg may have to carry it all, and its cable may be too small for that. With earth open, part of the ring has one earth only.",
        remedy:
          "Follow each conductor from the way and back again. Close line, neutral and earth, all three.",
      },
    },
  },
  "ring-bridged": {
    title: "A bridge across the ring",
    variants: {
      bridged: {
        what: "A cable makes a short cut across the ring.",
        why: "The load no longer shares as in a ring, and the three-step ring test cannot prove it.",
        remedy: "Take out the cable that cuts across. A ring is one round trip.",
      },
    },
  },
  "ring-loop": {
    title: "A loop away from the way",
    variants: {
      loop: {
        what: "Cables make a loop here that does not pass through the way: {places}.",
        why: "All the load of the loop enters at one place. It is no ring, and the ring test cannot prove it.",
        remedy: "Take one cable out of the loop, or bring both ends back to the way.",
      },
      fused: {
        title: "A loop behind a fuse",
        what: "Cables make a loop behind a fuse: {places}.",
        why: "The fuse protects each cable of it, but it is no standard arrangement, and the dead tests cannot prove it.",
        remedy: "Take one cable out of the loop, or say why it is right here.",
      },
    },
  },
  "two-rings": {
    title: "Two rings on one way",
    variants: {
      two: {
        what: "Two rings leave {place}.",
        why: "One device has to carry both. Whoever tests later may mix up their ends.",
        remedy: "Give each ring a way of its own, or say why both are on one.",
      },
    },
  },
  "ring-cable": {
    title: "Undersized ring cable",
    variants: {
      small: {
        what: "{cable} is {csaMm2}.",
        why: "A ring needs {leastCsaMm2} or more.[ The device lets {deviceA} through.] A smaller cable could overheat.",
        remedy: "Use cable of {leastCsaMm2} or more all round the ring.",
        several: {
          what: "These cables of the ring are {csaMm2}: {places}.",
        },
      },
      underrated: {
        what: "{cable} is {csaMm2}. The way it is run, it may carry {ratingA}.",
        why: "Each cable of a ring must be able to carry {leastA}. Thermal insulation, a warm place or other cables beside it keep its own heat in.",
        remedy: "Run it where it can lose its heat, or use a larger cable.",
        several: {
          what: "These cables of the ring are {csaMm2}: {places}. The way they are run, they may carry {ratingA}.",
          why: "Each cable of a ring must be able to carry {leastA}. Thermal insulation, a warm place or other cables beside them keep their own heat in.",
        },
      },
    },
  },
  "ring-device": {
    title: "The wrong device for a ring",
    variants: {
      over: {
        what: "{place} has a {deviceA} device on a ring.",
        why: "A ring may have {mostA} at most. Above that the cable of a leg could overheat before the device cuts it off.",
        remedy: "Fit a device of {mostA}.",
      },
      under: {
        what: "{place} has a {deviceA} device on a ring.",
        why: "The standard ring has {leastA} to {mostA}. A smaller device is safe, but it may trip often.",
        remedy: "Nothing has to be done. Check whether {mostA} was meant.",
      },
    },
  },
  "ring-share": {
    title: "One leg carries too much",
    variants: {
      share: {
        what: "With the loads of this task one leg of the ring carries {legA}.",
        why: "Its cable may carry {ratingA}. The loads sit close to one end, so the near leg takes most of the current.",
        remedy:
          "Put the large loads near the middle of the ring, or on a circuit of their own, or say how long they run.",
      },
      long: {
        what: "With the loads of this task one leg of the ring carries {legA} for hours.",
        why: "Its cable may carry {ratingA}. For hours that is too much, and the device does not trip.",
        remedy: "Put the large loads near the middle of the ring, or on a circuit of their own.",
      },
    },
  },
  "spur-one-point": {
    title: "Too many points on a spur",
    variants: {
      several: {
        what: "The spur that starts with {cause} feeds more than one point.",
        why: "A spur without a fuse feeds one point: one single or one twin socket outlet, or one fixed item.[ At worst it would carry {worstA}, but its cable may carry only {ratingA}.]",
        remedy:
          "Leave one point on the spur and feed the rest from places that are not on a spur. Or put a fused connection unit (FCU) with a 13 A fuse before all of them.",
      },
    },
  },
  "spur-on-spur": {
    title: "A spur off a spur",
    variants: {
      beyond: {
        what: "{cause} goes on from a point that is on a spur already.",
        why: "A spur without a fuse ends at its first point.[ With both, its cable would carry {worstA} at worst, but it may carry only {ratingA}.]",
        remedy:
          "Feed the outer point from a place that is not on a spur, or put a fused connection unit (FCU) with a 13 A fuse at the start of the spur.",
      },
    },
  },
  "spur-per-point": {
    title: "Two spurs from one place",
    variants: {
      two: {
        what: "More than one spur without a fuse leaves {place}.",
        why: "One spur from each point keeps the load spread over the circuit, and the terminals do not get crowded.",
        remedy: "Move one of the spurs to another point that is not on a spur.",
      },
    },
  },
  "spur-count": {
    title: "Many spurs",
    variants: {
      many: {
        what: "Spurs without a fuse on this ring: {spurs}. Points on the ring itself: {ringPoints}.",
        why: "Guidance allows no more such spurs than there are points on the ring.",
        remedy: "Bring some of the points into the ring, or say why this is right here.",
      },
    },
  },
  "spur-cable": {
    title: "Undersized spur cable",
    variants: {
      small: {
        what: "{cable} is a spur. It is {csaMm2}.",
        why: "On a circuit with a {deviceA} device a spur without a fuse needs {leastCsaMm2} or more. The device is much too large to protect a smaller cable.",
        remedy: "Use cable of {leastCsaMm2} or more for the spur.",
      },
      overload: {
        what: "{cable} is a spur. It is {csaMm2}. The way it is run, it may carry {ratingA}.",
        why: "{point} can take {worstA} at worst. The {deviceA} device does not trip at that, so the cable would overheat.",
        remedy:
          "Use a larger cable. If its run keeps the heat in, move it. For up to 13 A you can put a fused connection unit (FCU) before it.",
      },
      slim: {
        title: "A spur cable only just large enough",
        what: "{cable} is a spur. It is {csaMm2}. The way it is run, it may carry {ratingA}.",
        why: "That is enough for {point}, which takes {worstA} at worst. Yet on this circuit a spur is meant to carry {leastA}.",
        remedy: "Say why it is enough here, or use a larger cable.",
      },
    },
  },
  "spur-heavy": {
    title: "A branch with several points on a ring",
    variants: {
      several: {
        what: "From the ring a branch of large cable goes to several points. It is here: {places}.",
        why: "The device protects this cable. But all the load of the branch enters the ring at one place.",
        remedy: "Say why this is right here, or bring the points into the ring.",
      },
    },
  },
  "radial-cable": {
    title: "The device does not protect this cable",
    variants: {
      underrated: {
        what: "{cable} is {csaMm2}. The way it is run, it may carry {ratingA}.",
        why: "The {deviceA} device lets {deviceA} through for hours. The cable could overheat before the device cuts it off.",
        remedy:
          "Use a larger cable, or a smaller device that still carries the load. If its run keeps the heat in, move it.",
        several: {
          title: "The device does not protect these cables",
          what: "These cables are {csaMm2}: {places}. The way they are run, they may carry {ratingA}.",
          why: "The {deviceA} device lets {deviceA} through for hours. Cable like this could overheat before the device cuts it off.",
        },
      },
      "semi-enclosed": {
        what: "{cable} is {csaMm2}. The way it is run, it may carry {ratingA}, and behind a rewirable fuse only {allowedA}.",
        why: "A rewirable fuse of {deviceA} acts late. So the cable counts for less, and {allowedA} is not enough.",
        remedy: "Fit a circuit-breaker, or use a larger cable.",
        several: {
          title: "The device does not protect these cables",
          what: "These cables are {csaMm2}: {places}. The way they are run, they may carry {ratingA}, and behind a rewirable fuse only {allowedA}.",
          why: "A rewirable fuse of {deviceA} acts late. So cable counts for less, and {allowedA} is not enough.",
        },
      },
    },
  },
  "device-cable": {
    title: "The device does not protect this cable",
    variants: {
      underrated: {
        what: "{cable} is {csaMm2}. The way it is run, it may carry {ratingA}.",
        why: "The {deviceA} device lets {deviceA} through for hours. The cable could overheat before the device cuts it off.",
        remedy:
          "Use a larger cable, or a smaller device that still carries the load. If its run keeps the heat in, move it.",
        several: {
          title: "The device does not protect these cables",
          what: "These cables are {csaMm2}: {places}. The way they are run, they may carry {ratingA}.",
          why: "The {deviceA} device lets {deviceA} through for hours. Cable like this could overheat before the device cuts it off.",
        },
      },
      "semi-enclosed": {
        what: "{cable} is {csaMm2}. The way it is run, it may carry {ratingA}, and behind a rewirable fuse only {allowedA}.",
        why: "A rewirable fuse of {deviceA} acts late. So the cable counts for less, and {allowedA} is not enough.",
        remedy: "Fit a circuit-breaker, or use a larger cable.",
        several: {
          title: "The device does not protect these cables",
          what: "These cables are {csaMm2}: {places}. The way they are run, they may carry {ratingA}, and behind a rewirable fuse only {allowedA}.",
          why: "A rewirable fuse of {deviceA} acts late. So cable counts for less, and {allowedA} is not enough.",
        },
      },
    },
  },
  "own-circuit": {
    title: "This needs a circuit of its own",
    variants: {
      cooking: {
        what: "{point} shares its circuit with {others}.",
        why: "Cooking takes a lot of current for a long time. With other things on the circuit the device could trip.",
        remedy: "Feed it alone from a way of its own, through a cooker control.",
      },
      "water-heater": {
        what: "{point} shares its circuit with {others}.",
        why: "A water heater over {overLitres} runs for hours. With other things on the circuit the device could trip.",
        remedy: "Feed it alone from a way of its own.",
      },
      shower: {
        what: "{point} shares its circuit with {others}.",
        why: "A shower takes nearly all that its device and cable can give. Nothing is left for anything else.",
        remedy: "Feed it alone from a way of its own.",
      },
    },
  },
  "heavy-on-ring": {
    title: "A heavy load on a ring",
    variants: {
      cooking: {
        what: "{point} is fed from a ring[ and takes {powerW}].",
        why: "Cooking over {limitW} takes a lot of current at one place for a long time. A ring is for loads that are spread out.",
        remedy: "Give it a circuit of its own, or say why it is right here.",
      },
      "water-heater": {
        what: "{point} is fed from a ring[ and takes {powerW}].",
        why: "A water heater over {overLitres} takes its current at one place for hours. A ring is for loads that are spread out.",
        remedy: "Give it a circuit of its own, or say why it is right here.",
      },
      "space-heating": {
        what: "Heating is fed from a ring: {places}[, {powerW} in all].",
        why: "Storage heaters, or heaters for a whole house, take current for hours. A ring is for loads that come and go.",
        remedy: "Give the heating a circuit of its own, or say why it is right here.",
      },
    },
  },
  "cooker-control": {
    title: "Cooker control",
    variants: {
      none: {
        title: "No cooker control",
        what: "No cooker control stands before {point}.",
        why: "If a pan catches fire, somebody must be able to switch it off without reaching over it.",
        remedy: "Feed it through a cooker control no more than {mostM} away.",
      },
      far: {
        title: "The cooker control is too far away",
        what: "The control is {distanceM} from {point}.",
        why: "Guidance says {mostM} at most, so that it can be seen and reached at once.",
        remedy: "Use a control nearer to it.",
      },
    },
  },
  isolation: {
    title: "No means of isolation",
    variants: {
      none: {
        what: "{point} has nothing before it that isolates it from line and neutral.",
        why: "Whoever repairs it must be able to make it dead on the spot.",
        remedy:
          "Feed it through a double-pole switch that is rated for it. Up to 13 A, a switched fused connection unit (FCU) will do.",
      },
      "fuse-only": {
        title: "Only a fuse to isolate it",
        what: "{point} can be isolated only by taking the fuse out of {by}.",
        why: "That is enough for a boiler, if the designer says so. A switch is quicker and safer.",
        remedy: "Use a switched fused connection unit (FCU), or say why the fuse is enough.",
      },
    },
  },
  "switched-neutral": {
    title: "The switch is in the neutral",
    variants: {
      neutral: {
        what: "{switch} breaks the neutral of {place}, not the line.",
        why: "With the switch off the lamp is dark but still live. Whoever changes it could get a shock.",
        remedy: "Put the switch in the line.",
      },
    },
  },
  unswitched: {
    title: "No switch",
    variants: {
      none: {
        what: "Nothing switches {places}.",
        why: "A light needs a switch in its line.",
        remedy: "Bring the line through a switch before it goes to the light.",
      },
      "no-return": {
        title: "No switched line comes back",
        what: "No switched line comes back to {places}.",
        why: "A light at a rose is fed by the switched line. Without it the light stays dark, or has no switch.",
        remedy: "Take line to a switch and bring the switched line back to the rose.",
      },
    },
  },
  "always-on": {
    title: "The light never goes off",
    variants: {
      on: {
        what: "Whatever the switch does, there is light at {causes}.",
        why: "The line reaches it past the switch.",
        remedy: "Take the switched line (SL), not the line (L), to the light.",
      },
    },
  },
  "half-switched": {
    title: "The two-way switches do not each work",
    variants: {
      half: {
        what: "Not every switch of {place} turns it on and off by itself.",
        why: "From each switch the light must go on and off, whatever the others do. That takes both strappers (S1 and S2), and each common (C) in its place.",
        remedy: "Run S1 to S1 and S2 to S2 between the switches. No strapper may land on a common (C).",
      },
    },
  },
  "lighting-device": {
    title: "Wrong device or cable for lighting",
    variants: {
      over: {
        title: "The device is too large for lighting",
        what: "{place} has a {deviceA} device and feeds lights.",
        why: "Lights may have a device of {mostA} at most. 6 A or 10 A is usual. A larger one does not protect lampholders and thin cable.",
        remedy:
          "Fit a 6 A or 10 A device, or feed the lights through a fused connection unit (FCU) with a 3 A or 5 A fuse.",
      },
      small: {
        title: "Undersized cable for lighting",
        what: "{cable} is {csaMm2}.",
        why: "Cable to lights must be {leastCsaMm2} or more, so that it is strong enough and does not break.",
        remedy: "Use {leastCsaMm2} or 1.5 mm² cable.",
        several: {
          what: "These cables are {csaMm2}: {places}.",
        },
      },
    },
  },
  "lighting-load": {
    title: "Many lights on one circuit",
    variants: {
      many: {
        what: "{place} feeds {pointCount} lights on a {deviceA} device.",
        why: "Their load fits. But about {usualCount} is usual: with so many, one fault puts a large part of the house in the dark.",
        remedy: "Share the lights between two circuits, or say why this is right here.",
      },
    },
  },

  // Rating
  "design-current": {
    title: "More load than the device can carry",
    variants: {
      over: {
        what: "The load on {place} is {designA}.",
        why: "Its device is {deviceA}. That is too little: it can trip in use.",
        remedy:
          "Share the load between two circuits, or use a larger device with cable to match, where this kind of circuit may have one.",
      },
    },
  },
  "least-size": {
    title: "Undersized cable",
    variants: {
      power: {
        what: "{cable} is {csaMm2}.",
        why: "A fixed cable to socket outlets or power must be {leastCsaMm2} or more, so that it is strong enough and does not break.",
        remedy: "Use a cable of {leastCsaMm2} or more.",
        several: {
          what: "These cables are {csaMm2}: {places}.",
        },
      },
      lighting: {
        what: "{cable} is {csaMm2}.",
        why: "A fixed cable to lights must be {leastCsaMm2} or more, so that it is strong enough and does not break.",
        remedy: "Use a cable of {leastCsaMm2} or more.",
        several: {
          what: "These cables are {csaMm2}: {places}.",
        },
      },
    },
  },
  "fuse-size": {
    title: "The fuse is too large",
    variants: {
      "over-unit": {
        what: "{place} has a {fuseA} fuse.",
        why: "A fused connection unit (FCU) is made for {mostA} at most.",
        remedy: "Fit a fuse of {mostA} or less.",
      },
      "over-allowed": {
        what: "{place} has a {fuseA} fuse and feeds {point}.",
        why: "{point} may have {mostA} at most. A larger fuse does not protect its parts.",
        remedy: "Fit a {mostA} fuse.",
        reference: "The maker's instructions, which BS 7671:2018, 134.1.1, asks you to follow.",
      },
      lighting: {
        title: "A large fuse for lights",
        what: "{place} has a {fuseA} fuse and feeds lights.",
        why: "For lights 3 A or {mostA} is usual. A larger fuse protects thin cable and switches less well.",
        remedy: "Fit a 3 A or 5 A fuse, or say why a larger one is right here.",
      },
    },
  },
  "fused-cable": {
    title: "The fuse does not protect this cable",
    variants: {
      underrated: {
        what: "{cable} is fed through the {fuseA} fuse of {fcu}. It is {csaMm2} and may carry {ratingA} the way it is run.",
        why: "The fuse lets {fuseA} through for hours. The cable could overheat before the fuse blows.",
        remedy:
          "Fit a smaller fuse that still carries the load, or use a larger cable. If its run keeps the heat in, move it.",
        several: {
          title: "The fuse does not protect these cables",
          what: "These cables are fed through the {fuseA} fuse of {fcu}: {places}. They are {csaMm2} and may carry {ratingA} the way they are run.",
          why: "The fuse lets {fuseA} through for hours. Cable like this could overheat before the fuse blows.",
        },
      },
    },
  },
  "fused-load": {
    title: "More load than the fuse can carry",
    variants: {
      over: {
        what: "The {fuseA} fuse of {place} feeds a load of {designA}.",
        why: "The fuse is for all of it together. It would blow in use.",
        remedy: "Feed some of the load from another place on the circuit, or from a circuit of its own.",
        reference: "Standard: BS 1363-4, rating of a fused connection unit.",
      },
      "long-running": {
        title: "A heavy load for hours on a fuse",
        what: "{place} feeds a load of {designA} that runs for hours.",
        why: "A fused connection unit (FCU) gets hot when it carries its full {fuseA} for long.",
        remedy: "Feed it from a double-pole switch on a circuit of its own, or say why it is right here.",
        reference: "Common practice in the trade. The rating is that of BS 1363-4.",
      },
    },
  },
  "needs-fuse": {
    title: "This needs a fuse of its own",
    variants: {
      lighting: {
        what: "{point} is a light wired straight to a socket-outlet circuit with a {deviceA} device.",
        why: "Lampholders, switches and thin cable need a small fuse. Above {mostA} the device does not protect them.",
        remedy: "Feed it through a fused connection unit (FCU) with a 3 A fuse.",
      },
      appliance: {
        what: "{point} is wired straight to a socket-outlet circuit with a {deviceA} device.",
        why: "Above {mostA} the device does not protect the appliance and its flex.",
        remedy: "Feed it through a fused connection unit (FCU) with the fuse its maker asks for.",
      },
      "over-fuse": {
        title: "This needs a circuit of its own",
        what: "{point} is wired straight to a socket-outlet circuit with a {deviceA} device. It takes {loadA}.",
        why: "Above {mostA} the device does not protect the appliance. It would need a fuse, and none in a connection unit is larger than {mostFuseA}.",
        remedy: "Give it a circuit of its own.",
      },
    },
  },
  "point-load": {
    title: "A lot of load at one socket outlet",
    variants: {
      single: {
        what: "At {point} there is a load of {loadA}.",
        why: "A single socket outlet is made for {mostA}.",
        remedy: "Share the load between two socket outlets, or say why it is right here.",
      },
      twin: {
        what: "At {point} there is a load of {loadA}.",
        why: "A twin socket outlet is made for {mostA} in all, not for two full plugs.",
        remedy: "Share the load between two socket outlets, or say why it is right here.",
      },
    },
  },
  "accessory-rating": {
    title: "Underrated accessory",
    variants: {
      underrated: {
        what: "{place} is rated {ratingA}.",
        why: "It may have to carry {carriesA}. It would get too hot.",
        remedy: "Use one that is rated {carriesA} or more.",
      },
    },
  },
  "volt-drop": {
    title: "Too much voltage drop",
    variants: {
      lighting: {
        what: "The voltage drop at {place} is {dropV}.",
        why: "It may be {limitV} at most for lights. With more they are dim and can flicker.",
        remedy: "Use a shorter run or a larger cable.",
      },
      other: {
        what: "The voltage drop at {place} is {dropV}.",
        why: "It may be {limitV} at most. With more, appliances may not work as they should.",
        remedy: "Use a shorter run or a larger cable.",
      },
    },
  },
  "fault-loop": {
    title: "Disconnection is too slow",
    variants: {
      never: {
        what: "The earth fault loop impedance at {place} is {zsOhm}. It may be {limitOhm} at most.",
        why: "If line touched earth there, nothing would disconnect it in time. Metal would stay live: shock and fire danger.",
        remedy:
          "Use a shorter run, a larger cable or a device that cuts off sooner. With an earth electrode (TT) only an RCD does it.",
      },
      "rcd-only": {
        title: "Only the RCD gives disconnection in time",
        what: "The earth fault loop impedance at {place} is {zsOhm}. For the device alone it may be {limitOhm} at most.",
        why: "In a fault the RCD trips in time; the device alone does not.",
        remedy: "Use a shorter run or a larger cable, or say why the RCD is enough here.",
      },
      tt: {
        what: "The earth electrode and the RCD of {place} do not match.",
        why: "In a fault, metal could stay above {limitV} and nothing would trip: shock danger.",
        remedy: "Fit a 30 mA RCD, or improve the earth electrode.",
      },
      electrode: {
        title: "The earth electrode may not be steady",
        what: "The earth electrode has {electrodeOhm}. Above {mostOhm} it may not stay steady.",
        why: "When the ground dries out or freezes, its resistance can rise.",
        remedy:
          "Nothing to change here. On a real job, improve the electrode, or have it tested again in dry weather.",
      },
    },
  },
  "cpc-size": {
    title: "Undersized protective conductor",
    variants: {
      small: {
        what: "The protective conductor of {cable} is {cpcCsaMm2}. It needs {leastCsaMm2}.",
        why: "In a fault {faultA} would flow for {disconnectionS}. That could make it so hot that its insulation is damaged.",
        remedy: "Use a cable with a larger protective conductor, or a device that cuts off sooner.",
        several: {
          what: "The protective conductor is {cpcCsaMm2} in these cables: {places}. It needs {leastCsaMm2}.",
        },
      },
    },
  },
  rcd: {
    title: "No 30 mA RCD",
    variants: {
      "socket-outlets": {
        what: "{way} feeds socket outlets and has no RCD of {mostMa} or less.",
        why: "An RCD trips when current leaks to earth, through a person for example. Socket outlets of {toA} or less need one.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      lighting: {
        what: "{way} feeds lights in a home and has no RCD of {mostMa} or less.",
        why: "An RCD trips when current leaks to earth, through a person for example. Lights in a home need one.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      bathroom: {
        what: "{way} feeds {points} in a bath or shower room and has no RCD of {mostMa} or less.",
        why: "Wet skin lets more current through. Every circuit there needs an RCD.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      buried: {
        what: "{way} has no RCD of {mostMa} or less, and its cable lies less than {depthMm} deep in the wall: {cables}.",
        why: "A nail or a screw can reach a cable so near the surface.",
        remedy: "Protect this way with a {mostMa} RCD, or run the cable deeper.",
      },
      "metal-framed": {
        what: "{way} has no RCD of {mostMa} or less, and its cable runs in a wall with a metal frame: {cables}.",
        why: "A damaged cable could make the frame live.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      "socket-outlets-tt": {
        what: "{way} feeds socket outlets from a supply with its own earth electrode (TT), and has no RCD of {mostMa} or less.",
        why: "Here the device alone does not disconnect a fault in time: shock and fire danger.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      "lighting-tt": {
        what: "{way} feeds lights from a supply with its own earth electrode (TT), and has no RCD of {mostMa} or less.",
        why: "Here the device alone does not disconnect a fault in time: shock and fire danger.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      "bathroom-tt": {
        what: "{way} feeds {points} in a bath or shower room from a supply with its own earth electrode (TT), and has no RCD of {mostMa} or less.",
        why: "Here the device alone does not disconnect a fault in time, and wet skin lets more current through: shock danger.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      "buried-tt": {
        what: "{way} has no RCD of {mostMa} or less, its supply has its own earth electrode (TT), and its cable lies less than {depthMm} deep in the wall: {cables}.",
        why: "A nail can reach the cable, and the device alone does not disconnect a fault in time: shock and fire danger.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
      "metal-framed-tt": {
        what: "{way} has no RCD of {mostMa} or less, its supply has its own earth electrode (TT), and its cable runs in a wall with a metal frame: {cables}.",
        why: "A damaged cable could make the frame live, and the device alone does not disconnect that in time: shock danger.",
        remedy: "Protect this way with a {mostMa} RCD.",
      },
    },
  },
  "floor-area": {
    title: "A large floor area",
    variants: {
      ring: {
        what: "{way} feeds socket outlets on {areaM2} of floor.",
        why: "Guidance gives a ring {mostAreaM2} at most. The larger the area, the more is plugged in at once.",
        remedy: "Share the area between two circuits, or say why this is right here.",
      },
      radial: {
        what: "{way} feeds socket outlets on {areaM2} of floor.",
        why: "Guidance gives a radial with a {deviceA} device {mostAreaM2} at most. The larger the area, the more is plugged in at once.",
        remedy: "Share the area between two circuits, or say why this is right here.",
      },
    },
  },

  // Tests
  "test-missing": {
    title: "A test is missing",
    variants: {
      missing: {
        what: "For {way} these tests are not on record: {tests}.",
        why: "Only a test shows that what cannot be seen is right.",
        remedy: "Do each test and put its reading on record.",
      },
    },
  },
  "test-order": {
    title: "Tests out of order",
    variants: {
      order: {
        what: "For {way} this test was done too early: {test}.",
        why: "A later test can mislead, or be unsafe, until the earlier ones are right.",
        remedy: "Test again in order: continuity, ring, insulation, polarity.",
      },
    },
  },
  "reading-misjudged": {
    title: "A reading was judged wrongly",
    variants: {
      passed: {
        what: "{way}, {test}: the reading was called a pass. It is a fail.",
        why: "[The reading is {readingOhm}. ][The reading is {readingMegohm}. ]That is not what this test asks for.",
        remedy: "Compare the reading with what the test asks for, find the cause, and test again.",
      },
      failed: {
        what: "{way}, {test}: the reading was called a fail. It is a pass.",
        why: "[The reading is {readingOhm}. ][The reading is {readingMegohm}. ]That is what this test asks for.",
        remedy: "Compare the reading with what the test asks for once more.",
      },
      implausible: {
        what: "{way}, {test}: the reading was called a pass. Cable of that length cannot give it.",
        why: "[The reading is {readingOhm}. ]That is far from what the length and size give.",
        remedy: "Probe the right places and test again.",
      },
      misread: {
        what: "{way}, {test}: what was written down is not what the meter showed.",
        why: "[Written down: {readingOhm}. ][Written down: {readingMegohm}. ][The meter showed {shownOhm}. ][The meter showed {shownMegohm}. ]A record must say what was read.",
        remedy: "Test again and write down what the meter shows.",
      },
      "wrong-points": {
        what: "{way}, {test}: the probes were in the wrong places.",
        why: "Between other places the meter reads something else, even if the number looks right.",
        remedy: "Put the probes where this test is made and test again.",
      },
      "wrong-setting": {
        what: "{way}, {test}: something was not set for this test.",
        why: "The ends at the way, the link, the lead or the test voltage were not as this test needs them.",
        remedy: "Set them for this test and test again.",
      },
    },
  },
} as const satisfies Catalogue;
