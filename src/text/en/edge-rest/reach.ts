/** What an edge-referenced rest can hollow besides the blades it was made for. */
export const reach = {
  centre: 'Middle of the hollow from the edge',
  depth: 'Depth of the hollow',
  thickness: 'Thickness at the spine',
  height: 'Height of the blade',
  left: 'Depth of the shallowest pass',
  travel: 'Place of the lip slide on its base, within the slot less a reserve of 0.5 mm',
  slide: 'Running belt before the lip slide',
  seat: 'Running belt before the edge’s corner',
  strip: 'Running belt before the top of the lip',
  gap: 'Widest gap at the wheel',
  corner: 'Lip over the edge’s corner',
  lower: 'Hollow over the lip’s top',
  spine: 'Spine over the hollow',
  web: 'Steel left behind the hollow',
  wrapLow: 'Belt on the wheel below the contact',
  wrapHigh: 'Belt on the wheel above the contact',
  push: 'Room for the push: heights at which lip and wheel both carry their share',
  seatForce: 'Force on the seat, of the wheel’s',
  scope:
    'blades of constant thickness with a straight edge and a spine parallel to it, with the flat bevels and edges of this design, hollow on the same sides, all to one depth and place, on this design’s wheel and belts; every belt before the last stops as much shallower as here. Push block, stop collar and gauge follow the blade. A hollow that runs over its bevel’s shoulder is not counted, whether or not it could be ground. Not proved here: tang, plunge, a curved edge and a tapered spine; put the blade itself in to have them checked',
} as const;
