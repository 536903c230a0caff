import { block } from "./block.js";
import { quantity, temperature } from "./measures.js";

export const listeningSchema = block({
  temperature: temperature({
    least: -40,
    most: 60,
    description: "Of the air, which sets the speed of sound; 20 °C unless said",
  }).optional(),
  target: quantity({
    quantity: "dB",
    least: 40,
    most: 120,
    description: "Level that a loudspeaker is to reach at the reference seat; 85 dB unless said",
  }).optional(),
  headroom: quantity({
    quantity: "dB",
    least: 0,
    most: 40,
    description: "How far peaks go above the target; 20 dB unless said",
  }).optional(),
}).describe("What levels and delays are reckoned for");
