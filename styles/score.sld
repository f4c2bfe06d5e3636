<?xml version="1.0" encoding="UTF-8"?>
<!--
  Score, 0 to 1: the darker, the better.

  Five stops, each 13 units of CIELAB lightness below the one before (L* 80, 67, 54, 41, 28), while the
  hue turns from straw to deep blue. The order is carried by lightness alone, so it survives grey print
  and every kind of colour vision; the hues run along the yellow-blue axis, which the common red-green
  deficiencies see. Computed from L*C*h (C* 38, 36, 32, 26, 26; h 90, 118, 165, 215, 262 degrees) to sRGB.
  The worst score is still darker than ruled-out ground, which is left pale (see reasons).

  Cells that have no score are no-data and are not drawn.
-->
<StyledLayerDescriptor version="1.0.0"
    xmlns="http://www.opengis.net/sld"
    xmlns:ogc="http://www.opengis.net/ogc"
    xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd">
  <NamedLayer>
    <Name>score</Name>
    <UserStyle>
      <Title>Score</Title>
      <FeatureTypeStyle>
        <Rule>
          <RasterSymbolizer>
            <Opacity>0.85</Opacity>
            <ColorMap>
              <ColorMapEntry color="#dec47f" quantity="0" label="0"/>
              <ColorMapEntry color="#99aa69" quantity="0.25" label="0.25"/>
              <ColorMapEntry color="#428f72" quantity="0.5" label="0.5"/>
              <ColorMapEntry color="#006b78" quantity="0.75" label="0.75"/>
              <ColorMapEntry color="#0c4669" quantity="1" label="1"/>
            </ColorMap>
          </RasterSymbolizer>
        </Rule>
      </FeatureTypeStyle>
    </UserStyle>
  </NamedLayer>
</StyledLayerDescriptor>
