package tramontane.desktop.test;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;

/**
 * Asks the X server to act as if its own mouse and keyboard had moved, so that focus, grabs, menus, modifiers and drags are the real
 * ones. {@link Display#post} would do without modifiers and without a pressed button while the pointer moves.
 *
 * <p>Speaks the few requests that this takes by itself, over the server's local socket. Sources: X Window System Protocol, Version 11
 * (X.Org), appendix B "Protocol Encoding"; XTEST Extension Protocol, Version 2.2, request FakeInput; keysyms from the protocol's
 * appendix A.
 */
final class XFingers implements Fingers {
    private static final Pattern LOCAL = Pattern.compile("(?:unix)?:(\\d+)(?:\\.\\d+)?");
    private static final int KEY_PRESS = 2;
    private static final int KEY_RELEASE = 3;
    private static final int BUTTON_PRESS = 4;
    private static final int BUTTON_RELEASE = 5;
    private static final int MOTION = 6;
    private static final Map<Integer, Integer> KEYSYMS = new HashMap<>();

    static {
        int[][] known = {{SWT.SHIFT, 0xffe1}, {SWT.CTRL, 0xffe3}, {SWT.ALT, 0xffe9}, {SWT.COMMAND, 0xffeb},
            {SWT.ARROW_LEFT, 0xff51}, {SWT.ARROW_UP, 0xff52}, {SWT.ARROW_RIGHT, 0xff53}, {SWT.ARROW_DOWN, 0xff54},
            {SWT.HOME, 0xff50}, {SWT.END, 0xff57}, {SWT.PAGE_UP, 0xff55}, {SWT.PAGE_DOWN, 0xff56}, {SWT.INSERT, 0xff63},
            {SWT.DEL, 0xffff}, {SWT.ESC, 0xff1b}, {SWT.CR, 0xff0d}, {SWT.LF, 0xff0d}, {SWT.TAB, 0xff09}, {SWT.BS, 0xff08}};
        for (int[] pair : known) {
            KEYSYMS.put(pair[0], pair[1]);
        }
        for (int i = 0; i < 12; i++) {
            KEYSYMS.put(SWT.F1 + i, 0xffbe + i);
        }
    }

    private record Key(int code, boolean shift) { }

    private final SocketChannel channel;
    private final double pixelsPerPoint;
    private final int root;
    private final int xtest;
    private final int firstKey;
    private final int keys;
    private int symsPerKey;
    private int[] syms;

    private XFingers(SocketChannel channel, ByteBuffer setup, Display display) throws IOException {
        this.channel = channel;
        firstKey = Byte.toUnsignedInt(setup.get(34));
        keys = Byte.toUnsignedInt(setup.get(35)) - firstKey + 1;
        int vendor = Short.toUnsignedInt(setup.getShort(24));
        int screen = 40 + (vendor + 3) / 4 * 4 + 8 * Byte.toUnsignedInt(setup.get(29));
        root = setup.getInt(screen);
        pixelsPerPoint = Short.toUnsignedInt(setup.getShort(screen + 20)) / (double) display.getBounds().width;
        byte[] name = "XTEST".getBytes(StandardCharsets.US_ASCII);
        send(request(98, 0, 16).putShort((short) name.length).putShort((short) 0).put(name));
        ByteBuffer extension = reply();
        if (extension.get(8) == 0) {
            throw new IOException("the X server has no XTEST");
        }
        xtest = Byte.toUnsignedInt(extension.get(9));
        readKeyboard();
    }

    /** Opens a connection of its own to the server that the display is on. */
    static XFingers connect(Display display) {
        String name = Optional.ofNullable(System.getenv("DISPLAY")).orElse("");
        Matcher local = LOCAL.matcher(name);
        if (!local.matches()) {
            throw new IllegalStateException("tests move the pointer of a local X display only, and DISPLAY is \"" + name + "\"");
        }
        try {
            SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX);
            channel.connect(UnixDomainSocketAddress.of("/tmp/.X11-unix/X" + local.group(1)));
            return new XFingers(channel, setUp(channel, local.group(1)), display);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static ByteBuffer setUp(SocketChannel channel, String number) throws IOException {
        byte[] cookie = cookie(number);
        byte[] kind = cookie.length == 0 ? new byte[0] : "MIT-MAGIC-COOKIE-1".getBytes(StandardCharsets.US_ASCII);
        ByteBuffer hello = ByteBuffer.allocate(12 + (kind.length + 3) / 4 * 4 + (cookie.length + 3) / 4 * 4).order(ByteOrder.LITTLE_ENDIAN);
        hello.put(0, (byte) 'l').putShort(2, (short) 11).putShort(6, (short) kind.length).putShort(8, (short) cookie.length);
        hello.put(12, kind).put(12 + (kind.length + 3) / 4 * 4, cookie);
        write(channel, hello);
        ByteBuffer head = read(channel, 8);
        ByteBuffer rest = read(channel, 4 * Short.toUnsignedInt(head.getShort(6)));
        if (head.get(0) != 1) {
            throw new IOException("the X server refuses the connection: " + StandardCharsets.US_ASCII.decode(rest).toString().strip());
        }
        return ByteBuffer.allocate(8 + rest.capacity()).order(ByteOrder.LITTLE_ENDIAN).put(head).put(rest);
    }

    /** What lets us in, where the server asks for it; as xvfb-run and desktops set it up. */
    private static byte[] cookie(String number) throws IOException {
        Path file = Path.of(Optional.ofNullable(System.getenv("XAUTHORITY")).orElse(System.getProperty("user.home") + "/.Xauthority"));
        if (!Files.isReadable(file)) {
            return new byte[0];
        }
        try (DataInputStream in = new DataInputStream(Files.newInputStream(file))) {
            while (in.available() > 0) {
                in.readUnsignedShort();
                in.skipNBytes(in.readUnsignedShort());
                String display = new String(in.readNBytes(in.readUnsignedShort()), StandardCharsets.US_ASCII);
                String kind = new String(in.readNBytes(in.readUnsignedShort()), StandardCharsets.US_ASCII);
                byte[] data = in.readNBytes(in.readUnsignedShort());
                if (kind.equals("MIT-MAGIC-COOKIE-1") && (display.isEmpty() || display.equals(number))) {
                    return data;
                }
            }
        }
        return new byte[0];
    }

    private static ByteBuffer request(int opcode, int data, int length) {
        return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN).put((byte) opcode).put((byte) data).putShort((short) (length / 4));
    }

    private void send(ByteBuffer request) throws IOException {
        write(channel, request.position(0));
    }

    private static void write(SocketChannel channel, ByteBuffer bytes) throws IOException {
        bytes.position(0).limit(bytes.capacity());
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }

    private static ByteBuffer read(SocketChannel channel, int length) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        while (bytes.hasRemaining()) {
            if (channel.read(bytes) < 0) {
                throw new EOFException("the X server closed the connection");
            }
        }
        return bytes.flip();
    }

    /** The next reply; events, such as that of a changed keyboard, are passed over. */
    private ByteBuffer reply() throws IOException {
        while (true) {
            ByteBuffer head = read(channel, 32);
            switch (head.get(0)) {
                case 0 -> throw new IOException("the X server reports error " + head.get(1) + " in request " + head.get(10));
                case 1 -> {
                    ByteBuffer rest = read(channel, 4 * head.getInt(4));
                    return ByteBuffer.allocate(32 + rest.capacity()).order(ByteOrder.LITTLE_ENDIAN).put(head).put(rest);
                }
                default -> { }
            }
        }
    }

    private void fake(int type, int detail, int x, int y) {
        try {
            send(request(xtest, 2, 36).put((byte) type).put((byte) detail).putShort((short) 0).putInt(0).putInt(root).putLong(0)
                    .putShort((short) x).putShort((short) y));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private void readKeyboard() throws IOException {
        send(request(101, 0, 8).put((byte) firstKey).put((byte) keys));
        ByteBuffer map = reply();
        symsPerKey = Byte.toUnsignedInt(map.get(1));
        syms = new int[keys * symsPerKey];
        map.position(32).asReadOnlyBuffer().order(ByteOrder.LITTLE_ENDIAN).asIntBuffer().get(syms);
    }

    private Optional<Key> find(int keysym) {
        for (int column = 0; column < Math.min(2, symsPerKey); column++) {
            for (int key = 0; key < keys; key++) {
                if (syms[key * symsPerKey + column] == keysym) {
                    return Optional.of(new Key(firstKey + key, column == 1));
                }
            }
        }
        return Optional.empty();
    }

    /** Gives an unused key a character that no key has, for good: whoever is told of it late would otherwise take it for another. */
    private Key learn(int keysym) throws IOException {
        for (int key = keys - 1; key >= 0; key--) {
            boolean free = true;
            for (int column = 0; column < symsPerKey; column++) {
                free &= syms[key * symsPerKey + column] == 0;
            }
            if (free) {
                ByteBuffer change = request(100, 1, 8 + 4 * symsPerKey).put((byte) (firstKey + key)).put((byte) symsPerKey).putShort((short) 0);
                for (int column = 0; column < symsPerKey; column++) {
                    change.putInt(keysym);
                    syms[key * symsPerKey + column] = keysym;
                }
                send(change);
                sync();
                return new Key(firstKey + key, false);
            }
        }
        throw new IllegalStateException("the keyboard has no key left for keysym 0x" + Integer.toHexString(keysym));
    }

    @Override
    public void move(Point place) {
        fake(MOTION, 0, pixels(place.x), pixels(place.y));
    }

    /** A window manager may hold a button back until it has looked at it, so what comes next has to wait for that. */
    @Override
    public void button(int number, boolean down) {
        fake(down ? BUTTON_PRESS : BUTTON_RELEASE, number, 0, 0);
        int bit = 0x80 << number;
        long end = System.nanoTime() + 5_000_000_000L;
        while ((pointer() & bit) != 0 != down) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("button " + number + " did not go " + (down ? "down" : "up"));
            }
            try {
                Thread.sleep(1);
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(interrupted);
            }
        }
    }

    /** Which buttons and modifiers the server holds for pressed (QueryPointer). */
    private int pointer() {
        try {
            send(request(38, 0, 8).putInt(root));
            return Short.toUnsignedInt(reply().getShort(24));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public void key(int code, boolean down) {
        Integer keysym = KEYSYMS.get(code);
        if (keysym == null) {
            throw new IllegalArgumentException("no key of the keyboard is known for SWT's code " + code);
        }
        fake(down ? KEY_PRESS : KEY_RELEASE, find(keysym).orElseThrow().code(), 0, 0);
    }

    @Override
    public void character(int codePoint, boolean down) {
        int keysym = switch (codePoint) {
            case '\n', '\r', '\t', '\b', SWT.ESC, SWT.DEL -> KEYSYMS.get(codePoint);
            default -> codePoint < 0x100 ? codePoint : 0x01000000 | codePoint;
        };
        try {
            Optional<Key> known = find(keysym);
            Key key = known.isPresent() ? known.get() : learn(keysym);
            if (key.shift() && down) {
                key(SWT.SHIFT, true);
            }
            fake(down ? KEY_PRESS : KEY_RELEASE, key.code(), 0, 0);
            if (key.shift() && !down) {
                key(SWT.SHIFT, false);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private int pixels(int points) {
        return (int) Math.round(points * pixelsPerPoint);
    }

    /** By GetImage; a picture that SWT copies from the display has its resolution at 100 percent only. */
    @Override
    public ImageData look(Rectangle area) {
        int width = pixels(area.width);
        int height = pixels(area.height);
        try {
            send(request(73, 2, 20).putInt(root).putShort((short) pixels(area.x)).putShort((short) pixels(area.y))
                    .putShort((short) width).putShort((short) height).putInt(-1));
            IntBuffer seen = reply().position(32).slice().order(ByteOrder.LITTLE_ENDIAN).asIntBuffer();
            if (seen.capacity() != width * height) {
                throw new IOException("the X server has no 32 bits for each pixel");
            }
            // Rows without padding: what writes PNG files for SWT under GTK takes padding for pixels.
            byte[] bytes = new byte[3 * width * height];
            for (int at = 0; at < bytes.length; at += 3) {
                int pixel = seen.get();
                bytes[at] = (byte) (pixel >> 16);
                bytes[at + 1] = (byte) (pixel >> 8);
                bytes[at + 2] = (byte) pixel;
            }
            return new ImageData(width, height, 24, new PaletteData(0xff0000, 0x00ff00, 0x0000ff), 1, bytes);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public void sync() {
        try {
            // GetInputFocus: its reply comes after everything before it was done and told to the clients.
            send(request(43, 0, 4));
            reply();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
