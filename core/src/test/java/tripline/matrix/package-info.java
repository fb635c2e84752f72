/**
 * The fault matrix: seeded actuators with one fault each (and with none), recorded by the model,
 * explained and judged by the product; every cause must come out under its own name and no other.
 */
package tripline.matrix;
