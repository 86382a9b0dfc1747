package gripwright.model;

/**
 * How wrong the placement may be: independent scatter of the object about its nominal place, in table axes.
 *
 * @param x along the closing direction [m]
 * @param y across [m]
 * @param turn about the vertical [rad]
 * @param height of the hand over its intended height [m]
 */
public record Placement(Scatter x, Scatter y, Scatter turn, Scatter height) {}
