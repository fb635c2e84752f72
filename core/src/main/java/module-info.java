/**
 * From samples of position and contacts to a verdict; no files, threads, clocks or output of its
 * own.
 */
module tripline.core {
  requires org.apache.commons.statistics.distribution;
  requires org.slf4j;
  requires static transitive org.jspecify;

  exports tripline;
  exports tripline.capture;
  exports tripline.compare;
  exports tripline.csv;
  exports tripline.job;
  exports tripline.link;
  exports tripline.live;
  exports tripline.measure;
  exports tripline.reduce;
  exports tripline.result;
  exports tripline.sample;
  exports tripline.travel;
}
