import { sabotageCarrier } from './sabotage/backing-carrier.ts';
import { sabotageCarriage } from './sabotage/carriage.ts';
import { sabotageEdgeRest } from './sabotage/edge-rest.ts';
import { sabotageSpineRest } from './sabotage/spine-rest.ts';

sabotageEdgeRest();
sabotageSpineRest();
sabotageCarriage();
sabotageCarrier();
