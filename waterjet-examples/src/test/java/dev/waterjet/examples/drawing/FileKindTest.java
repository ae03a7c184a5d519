package dev.waterjet.examples.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.examples.DrawingReader;
import dev.waterjet.measure.TextException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileKindTest {

    private static byte[] bytes(String text) {
        return text.replace("\\n", "\n")
                .replace("\\r", "\r")
                .replace("\\0", "\0")
                .replace("\\x1a", "\u001a")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "%\\nO1000 (MIRROR CELL)\\nN10 G90 G21\\nN20 G0X0Y0\\nM30\\n%|PROGRAM",
                "g1 x10 y-.5 f300 ; feed\\n(only a note)\\nm5|PROGRAM",
                "; nothing but a note|PROGRAM",
                "#1=5\\nG1 X#1|PROGRAM",
                ":60 G1 X150 Y60\\n/N70 M0|PROGRAM",
                "<svg width='9mm'/>|SVG",
                "<?xml version='1.0'?>\\n<!-- a --><!DOCTYPE svg PUBLIC 'a' 'b'>\\n<s:svg xmlns:s='x'>|SVG",
                "<html><svg/></html>|XML",
                "  0\\r\\nSECTION\\r\\n  2\\r\\nHEADER\\r\\n|DXF",
                "999\\nmade here\\n0\\nSECTION\\n2\\nENTITIES\\n|DXF",
                "AC1027\\0\\0\\0 and so on|BINARY_CAD",
                "AC1032|BINARY_CAD",
                "%PDF-1.4\\n%abc|PDF",
                "%!PS-Adobe-3.0 EPSF-3.0|POSTSCRIPT",
                "ISO-10303-21;\\nHEADER;|STEP",
                "GIF89a\\0|IMAGE",
                "\u0089PNG\\r\\n\\x1a\\n|IMAGE",
                "part,size\\norifice,0.25 mm|TEXT",
                "Dear workshop, please cut ten of these.|TEXT",
                "{\"machine\": {}}|TEXT",
                "abc\\0\\0def|BINARY",
                "'   \\n'|EMPTY",
                "''|EMPTY",
            })
    void filesAreKnownByTheirContent(String content, FileKind kind) {
        assertThat(FileKind.of(bytes(content))).isEqualTo(kind);
    }

    @Test
    void binaryDxfAndArchivesAreKnownByTheirFirstBytes() throws IOException {
        String signature = "%s Binary DXF\\r\\n\\x1a\\0 and groups";
        assertThat(FileKind.of(bytes(String.format(signature, "1234567")))).isEqualTo(FileKind.BINARY_DXF);
        assertThat(FileKind.of(bytes(String.format(signature, "123456789")))).isEqualTo(FileKind.BINARY);
        ByteArrayOutputStream zipped = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(zipped)) {
            out.write(bytes("<svg/>"));
        }
        assertThat(FileKind.of(zipped.toByteArray())).isEqualTo(FileKind.GZIP);
        ByteArrayOutputStream archive = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(archive)) {
            out.putNextEntry(new ZipEntry("part.svg"));
        }
        assertThat(FileKind.of(archive.toByteArray())).isEqualTo(FileKind.ZIP);
    }

    @Test
    void textMayBeInUtf16OrInAnOldCodePage() {
        byte[] little = "\ufeff<svg/>".getBytes(StandardCharsets.UTF_16LE);
        byte[] big = "\ufeff<svg/>".getBytes(StandardCharsets.UTF_16BE);

        assertThat(FileKind.of(little)).isEqualTo(FileKind.SVG);
        assertThat(FileKind.of(big)).isEqualTo(FileKind.SVG);
        assertThat(FileKind.text(new byte[] {'T', (byte) 0xfc, 'r'})).isEqualTo("T\u00fcr");
        assertThat(FileKind.text("\ufeffT\u00fcr".getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("T\u00fcr");
    }

    @Test
    void whatIsNoDrawingIsRefusedByWhatItIs() {
        assertThatThrownBy(() -> DrawingReader.read(bytes("%PDF-1.7"), DrawingSettings.defaults()))
                .isInstanceOfSatisfying(TextException.class, refusal -> {
                    assertThat(refusal.code()).isEqualTo("wrong-file-kind");
                    assertThat(refusal.parameters().get("kind")).asString().contains("PDF");
                    assertThat(refusal.getMessage().lines()).hasSize(1);
                });
    }
}
