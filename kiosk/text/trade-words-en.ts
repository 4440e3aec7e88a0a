/** Words of the trade and what they mean, told on a tap, in English. */
export const tradeWordsEn = {
  "word.ring-test": "ring test",
  "word.ring-test.means":
    "Three measurements that show that a ring is whole: each core end to end, then L crossed with N, then L crossed with E.",
  "word.ring": "ring",
  "word.ring.means": "A circuit that goes out from its way, round all points, and back to the same way.",
  "word.radial": "radial",
  "word.radial.means": "A circuit that goes out from its way and ends at the last point.",
  "word.circuit": "circuit",
  "word.circuit.means": "All that one way feeds, from its device to the last point.",
  "word.spur": "spur",
  "word.spur.means":
    "A branch: one cable from a place on the circuit to one more point. It does not come back.",
  "word.leg": "leg",
  "word.leg.means": "One of the cables that leave a way. A ring has two, and they share its current.",
  "word.point": "point",
  "word.point.means": "A place that takes current: a socket outlet, an FCU, an appliance or a light.",
  "word.way": "way",
  "word.way.means": "One place in the consumer unit with its own device. One circuit starts there.",
  "word.consumer-unit": "consumer unit",
  "word.consumer-unit.means":
    "The box where the supply comes in and is shared out: main switch, and a way with its device for each circuit.",
  "word.device": "device",
  "word.device.means":
    "The circuit-breaker of the way, in an old house a fuse. It protects the cable from too much current.",
  "word.device-type": "type",
  "word.device-type.means":
    "How soon a circuit-breaker opens in a fault: at once from 5 times its rating (B), 10 times (C) or 20 times (D).",
  "word.rewirable": "rewirable fuse",
  "word.rewirable.means":
    "An old kind of fuse (BS 3036): a wire that is put in anew. It acts late, so the cable behind it counts for less.",
  "word.fcu": "FCU",
  "word.fcu.means": "Fused connection unit. Its fuse, 13 A at most, is for all that it feeds together.",
  "word.fuse": "fuse",
  "word.fuse.means": "A part that melts when too much current flows, and so cuts it off.",
  "word.rcd": "RCD",
  "word.rcd.means":
    "Residual current device. It switches off when current leaks to earth. It adds to the earth, never replaces it.",
  "word.trip": "trip",
  "word.trip.means":
    "To switch off by itself, because the current is too large or leaks to earth. Disconnection is the same for a fuse too.",
  "word.rating": "rating",
  "word.rating.means": "What a part is made to carry all the time, such as 20 A.",
  "word.load": "load",
  "word.load.means": "What takes current, or the current it takes.",
  "word.overload": "overload",
  "word.overload.means": "More current than a cable or a device may carry for long.",
  "word.short": "short circuit",
  "word.short.means": "Line meets neutral or earth with nothing between them. A very large current flows.",
  "word.fault-current": "fault current",
  "word.fault-current.means":
    "The current that flows when line meets neutral or earth. The device must be able to cut it off.",
  "word.let-through": "let-through energy",
  "word.let-through.means":
    "What a device still lets into the cable while it cuts off a fault. The maker states it.",
  "word.Zs": "Zs",
  "word.Zs.means":
    "The impedance of the path a fault to earth takes, there and back. The lower, the sooner the device opens.",
  "word.Ze": "Ze",
  "word.Ze.means": "The part of the earth fault loop that lies outside the house.",
  "word.earth-electrode": "earth electrode",
  "word.earth-electrode.means":
    "A metal rod in the ground: the earth of a house that gets none with its supply.",
  "word.TT": "TT",
  "word.TT.means":
    "A supply without an earth of its own: the house has an earth electrode. So little fault current flows that an RCD is needed.",
  "word.earthing": "earthing",
  "word.earthing.means":
    "How a house gets its earth: with the supply (TN), or from an earth electrode of its own (TT).",
  "word.junction-box": "junction box",
  "word.junction-box.means": "A box where cables are joined. It takes no current itself.",
  "word.isolate": "isolate",
  "word.isolate.means":
    "To switch off all supply and keep it off, with a padlock, so that nobody can switch it on.",
  "word.isolator": "isolator",
  "word.isolator.means":
    "A switch that cuts both line and neutral (double-pole), so that what is behind it can be worked on.",
  "word.pole": "pole",
  "word.pole.means":
    "One conductor that a switch breaks: a single-pole switch breaks line, a double-pole one line and neutral.",
  "word.cooker-control": "cooker control",
  "word.cooker-control.means":
    "A double-pole switch for a cooker, at most 2 m from it. Some have a socket outlet too.",
  "word.allowance": "allowance for cookers",
  "word.allowance.means":
    "Not all of a cooker is on at once. Its circuit counts the first 10 A in full and 30 % of the rest.",
  "word.sides": "supply side, load side",
  "word.sides.means":
    "A unit or switch with two sides: the supply side is towards the way, the load side towards what it feeds.",
  "word.Ib": "Ib",
  "word.Ib.means": "Design current: what the loads take.",
  "word.In": "In",
  "word.In.means": "The rating of the device or fuse.",
  "word.Iz": "Iz",
  "word.Iz.means": "What the cable can carry where it runs, for years, without harm.",
  "word.It": "It",
  "word.It.means":
    "The current that the table must give for the cable. Heat, insulation and cables side by side make it larger.",
  "word.factors": "Ca, Cg, Ci",
  "word.factors.means":
    "Numbers that make It larger: Ca where the air is warm, Cg for cables side by side, Ci in thermal insulation.",
  "word.method": "method",
  "word.method.means":
    "How a cable is run, by the letters and numbers of BS 7671. The same cable may carry more by one than by another.",
  "word.conduit": "conduit",
  "word.conduit.means": "A pipe that cables are drawn into.",
  "word.size": "size",
  "word.size.means":
    "The area of the copper of a core, in mm². The larger it is, the more current it may carry.",
  "word.insulation-resistance": "insulation resistance",
  "word.insulation-resistance.means":
    "How well the covers of the cores keep them apart. It is tested at 500 V and has to be 1 MΩ or more.",
  "word.resistance": "resistance",
  "word.resistance.means": "How much a path holds current back, in ohms (Ω).",
  "word.insulation": "insulation",
  "word.insulation.means":
    "Two things. The cover of a core: it is tested. And thermal insulation, which keeps heat in a house: a cable in it may carry less.",
  "word.volt-drop": "voltage drop",
  "word.volt-drop.means":
    "The volts that are lost in the cable on the way to a point. At most 3 % for lights and 5 % for the rest.",
  "word.switched-line": "switched line",
  "word.switched-line.means":
    "The line after the switch. It is live only while the switch is on. Its core is marked brown where it is not.",
  "word.line": "line",
  "word.line.means": "The brown conductor. It brings the current and is live.",
  "word.neutral": "neutral",
  "word.neutral.means": "The blue conductor. The current goes back in it. It counts as live, like line.",
  "word.earth": "earth",
  "word.earth.means":
    "The green-and-yellow conductor, also called the protective conductor. It protects people when something breaks.",
  "word.common": "common",
  "word.common.means": "The terminal of a two-way switch that it joins to one strapper or the other.",
  "word.strapper": "strapper",
  "word.strapper.means":
    "One of the two cores that join two-way switches. At least one of them is live at any moment.",
  "word.two-way": "two-way switch",
  "word.two-way.means":
    "A switch that joins its common to one strapper or the other. Two of them work one light.",
  "word.intermediate": "intermediate switch",
  "word.intermediate.means":
    "A switch in the strappers between two two-way switches. It swaps the strappers, so it works the light too.",
  "word.core": "core",
  "word.core.means": "One wire of a cable, also called a conductor. Its colour tells what it is for.",
  "word.sleeving": "sleeving",
  "word.sleeving.means":
    "Coloured tube over a core that tells what it is, such as green-and-yellow over a bare earth.",
  "word.terminal": "terminal",
  "word.terminal.means": "The place in an accessory where a core is held, most often by a screw.",
  "word.accessory": "accessory",
  "word.accessory.means": "A part at the end of a cable: socket outlet, switch, ceiling rose, FCU.",
  "word.rose": "ceiling rose",
  "word.rose.means":
    "The fitting on the ceiling that a lamp hangs from. Its terminals join the lighting cables.",
  "word.lampholder": "lampholder",
  "word.lampholder.means": "The part that a lamp is pushed or screwed into.",
  "word.flex": "flex",
  "word.flex.means": "The bendable cable between a plug or an FCU and an appliance.",
  "word.live": "live",
  "word.live.means": "Joined to the supply: whoever touches it can be killed.",
  "word.dead-test": "dead tests",
  "word.dead-test.means":
    "The tests that are made before a circuit is switched on: continuity, ring, insulation, polarity.",
  "word.dead": "dead",
  "word.dead.means":
    "Cut off from the supply. It counts only when a tester that was itself proved has shown it.",
  "word.continuity": "continuity",
  "word.continuity.means":
    "That a core is joined all the way, without a gap. It is measured in ohms, with the circuit dead.",
  "word.R1-R2": "R1 + R2",
  "word.R1-R2.means":
    "R1 is the resistance of line, R2 that of earth, from the way to a point. Together they show that earth gets there.",
  "word.polarity": "polarity",
  "word.polarity.means":
    "Each conductor at its own terminal, and every single-pole switch and fuse in the line. It is tested.",
  "word.null": "null",
  "word.null.means": "To take the resistance of the test leads out of the reading: tips together, then Null.",
  "word.extra-low": "extra-low voltage",
  "word.extra-low.means": "50 V or less. This board works with far less; a house has 230 V.",
  "word.competent": "competent",
  "word.competent.means":
    "With the training and the experience to do the work safely. Part P asks some to be registered as well.",
} as const;
