/**
 * Text that most designs share, known to both ends of a link: deflate then writes references
 * instead of repeating it. Frozen: links in the world were written with exactly these bytes. A
 * better dictionary gets a new link version and this one stays.
 */
export const LINK_DICTIONARY_1 = [
  '{"name":"","bevels":{"left":{"kind":"hollow","centre":20,"depth":0.3,"angle":4},"right":',
  '{"kind":"none"}},"outline":{"kind":"curves","edge":[[0,40],[100,40]],"spine":[[0,0],[100',
  ',0]]},"pattern":{"kind":"edges"},"hole":{"kind":"tapped","thread":"M8"},"process":"saw-d',
  'rill","material":"stainless"}{"family":"backing-carrier","parameters":{"cheek":6,"contac',
  't":50,"depth":18,"endRadius":4,"face":"soft","modulus":20,"plate":6,"platenThickness":8,',
  '"play":0.3,"push":40,"radius":1000,"runningClearance":0.5,"softThickness":5,"takeUp":20,',
  '"tension":3}}{"family":"carriage","parameters":{"angleTolerance":0.02,"base":8,"beltGap"',
  ':1,"edgeHeight":95,"fenceTolerance":0.05,"handDistance":50,"heelReserve":0.1,"jawGap":6,',
  '"jawWidth":20,"leastEdge":0.2,"length":100,"mount":"pattern","plate":8,"plungeMargin":1,',
  '"runningClearance":0.4,"tabPlay":0.15,"tipAllowance":0.5,"tipOverlap":8,"tipSettings":0,',
  '"travelReserve":1.5,"upright":"plates"}}{"family":"edge-rest","parameters":{"base":8,"bu',
  'iltNoseTravel":0,"builtTravel":0,"guardRise":12,"guide":"slots","guideLength":50,"guideP',
  'lay":0.1,"handDistance":50,"leastWeb":0.5,"lip":"pads","lipHeight":1.2,"lipThickness":1,',
  '"mount":"pattern","noseGap":1.2,"padMargin":2,"plate":6,"plungeMargin":2.5,"pushReserve"',
  ':0.1,"runningClearance":0.4,"settingTolerance":0.03,"stepWing":18,"tipLift":1,"tipOverla',
  'p":8,"travelReserve":2,"wear":4,"wheel":"contact","wheelShare":0.5,"wing":32}}{"format":',
  '"platenwright-design","schema":1,"name":"","blades":[{"name":"","bevels":{"left":{"kind"',
  ':"height","height":23},"right":{"kind":"height","height":23}},"edge":{"asHeatTreated":0.',
  '7,"shareLeft":0.5,"wanted":0.2},"line":{"allowed":1.5,"follow":"share"},"outline":{"kind',
  '":"dimensions","bellyHeight":49,"bellyStart":95,"heelHeight":50,"length":210,"spineDropS',
  'tart":110,"spineSagitta":0,"tipDrop":8},"quantity":6,"ricasso":0,"spineRadius":0.3,"tang',
  '":{"kind":"tang","drop":4,"height":18,"length":110,"thickness":3},"thickness":[{"t":3,"u',
  '":0}]},{"name":"","bevels":{"left":{"kind":"height","height":21},"right":{"kind":"height',
  '","height":21}},"edge":{"asHeatTreated":0.7,"shareLeft":0.5,"wanted":0.2},"line":{"allow',
  'ed":1.5,"follow":"share"},"outline":{"kind":"dimensions","bellyHeight":45,"bellyStart":8',
  '0,"heelHeight":46,"length":180,"spineDropStart":95,"spineSagitta":0,"tipDrop":7},"quanti',
  'ty":6,"ricasso":0,"spineRadius":0.3,"tang":{"kind":"tang","drop":4,"height":18,"length":',
  '105,"thickness":3},"thickness":[{"t":3,"u":0}]}],"fixture":{"family":"spine-rest","param',
  'eters":{"aim":"line","base":8,"guardRise":12,"guide":"slots","guideLength":50,"guidePlay',
  '":0.1,"handDistance":50,"leastBearing":0.5,"leastEdge":0.2,"mount":"pattern","noseGap":1',
  ',"padMargin":2,"plate":6,"plungeMargin":2.5,"pushReserve":0.1,"runningClearance":0.4,"se',
  'ttingTolerance":0.05,"stepWing":10,"tipLift":2,"tipOverlap":8,"travelReserve":2,"wing":4',
  '0}},"grinder":{"format":"platenwright-grinder","schema":1,"name":"","backings":[{"kind":',
  '"none","id":"bare","thickness":0},{"kind":"leather","id":"leather","thickness":5}],"belt',
  '":{"direction":"down","flutter":0.3,"length":1830,"splice":0.2,"tracking":2,"width":50},',
  '"belts":[{"id":"P36","grit":36,"purpose":"","thickness":1.6},{"id":"P60","grit":60,"purp',
  'ose":"","thickness":1.4},{"id":"P120","grit":120,"purpose":"","thickness":1.1},{"id":"P2',
  '20","grit":220,"purpose":"","thickness":0.9},{"id":"P400","grit":400,"purpose":"","thick',
  'ness":0.7}],"drive":{"beltRating":35,"pulleyDiameter":125,"shaftSpeed":2850,"wheelRating',
  '":40},"keepOuts":[{"name":"","max":[60,-12,150],"min":[-60,-300,-45]}],"lean":0,"platen"',
  ':{"kind":"flat","bottom":-45,"edgeRadius":4,"liner":0,"top":150,"width":50},"rest":{"kin',
  'd":"table","depth":120,"gap":8,"pattern":{"kind":"slots","axis":"y","slots":[{"at":-50,"',
  'from":30,"to":110,"width":8.5},{"at":50,"from":30,"to":110,"width":8.5}]},"thickness":10',
  ',"travelY":15,"travelZ":0,"width":150},"wheels":[{"id":"lower","centre":[-26,-75],"diame',
  'ter":50,"role":"idler","surface":"hard","width":50},{"id":"upper","centre":[-26,180],"di',
  'ameter":50,"role":"idler","surface":"hard","width":50},{"id":"tracking","centre":[-300,3',
  '03],"diameter":75,"role":"tracking","surface":"hard","width":50},{"id":"drive","centre":',
  '[-600,-20],"diameter":125,"role":"drive","surface":"hard","width":50}]},"making":{"plate',
  's":{"kerf":0,"material":"steel","process":"laser","thicknesses":[4,6,8,10]},"prints":{"f',
  'it":"clearance","layer":0.2,"material":"PETG","nozzle":0.4},"units":"mm"},"notes":"","re',
  'vision":1,"sequence":[{"backing":"bare","belt":"P36","edge":0.5,"steeper":0.4},{"backing',
  '":"bare","belt":"P60","edge":0.35,"steeper":0.2},{"backing":"bare","belt":"P120","edge":',
  '0.27,"steeper":0.15},{"backing":"bare","belt":"P220","edge":0.23,"steeper":0.1},{"backin',
  'g":"leather","belt":"P400","edge":0.2,"steeper":0}]}',
].join('');

/**
 * As the first, and how parts are made with the fields that came later: the end of a dictionary
 * is the nearest and the cheapest to refer to. Frozen as well.
 */
export const LINK_DICTIONARY_2 = [
  LINK_DICTIONARY_1,
  ',"making":{"plates":{"inches":"no","kerf":0,"material":"steel","nest":{"gap":5,"height":',
  '500,"margin":10,"sheets":"no","width":1000},"process":"laser","thicknesses":[4,5,6,8,10,',
  '12]},"prints":{"bed":{"depth":220,"width":220},"fit":"clearance","layer":0.2,"material":',
  '"PETG","nozzle":0.4,"play":{"clearance":0.4,"close":0.2,"press":0}},"units":"mm"},"notes',
  '":"',
].join('');
