/** Command line, files, serial ports and reports around the core. */
module tripline.harness {
  requires tripline.core;
  requires ch.qos.logback.classic;
  requires ch.qos.logback.core;
  requires com.fasterxml.jackson.databind;
  requires com.fazecast.jSerialComm;
  requires com.sun.jna;
  requires com.samskivert.jmustache;
  requires info.picocli;
  requires openhtmltopdf.core;
  requires openhtmltopdf.pdfbox;
  requires openhtmltopdf.svg.support;
  requires org.slf4j;
  requires org.tomlj;
  requires static org.jspecify;

  opens tripline.harness.command to
      info.picocli;

  provides ch.qos.logback.classic.spi.Configurator with
      tripline.harness.LogbackSetup;
}
