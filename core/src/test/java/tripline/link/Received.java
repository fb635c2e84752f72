package tripline.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Keeps what a decoder hands on. */
final class Received implements BodySink {
  final List<LinkMessage> messages = new ArrayList<>();
  final List<Map<String, Object>> trees = new ArrayList<>();
  final List<Integer> sequences = new ArrayList<>();
  final LinkDecoder decoder = new LinkDecoder(this);

  @Override
  public void onBody(MessageType type, byte[] body, int length) {
    messages.add(LinkMessage.read(type, body));
    trees.add(BodyTree.of(type, body));
    sequences.add(BodySink.sequence(body));
  }

  Received feed(byte[] bytes) {
    decoder.accept(bytes, 0, bytes.length);
    return this;
  }
}
