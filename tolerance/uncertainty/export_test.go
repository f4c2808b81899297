package uncertainty

// Edges shows the ziggurat's layers to the tests.
var Edges = edges
