// Stand-in for the types of uPlot.
declare const u: any; export default u;
