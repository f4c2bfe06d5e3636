<?xml version="1.0" encoding="UTF-8"?>
<!--
  Depth in metres, positive down, under everything else: the deeper, the darker, but never dark.

  Eight stops of a blue-tinged grey from L* 97 to L* 74 (C* 2 to 8, h 235 degrees), so that the score reads over them. Most of the
  fall lies between 30 m and 140 m, where modules stand; contour lines tell the figures.
-->
<StyledLayerDescriptor version="1.0.0"
    xmlns="http://www.opengis.net/sld"
    xmlns:ogc="http://www.opengis.net/ogc"
    xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd">
  <NamedLayer>
    <Name>depth</Name>
    <UserStyle>
      <Title>Depth</Title>
      <FeatureTypeStyle>
        <Rule>
          <RasterSymbolizer>
            <ColorMap>
              <ColorMapEntry color="#f2f7f9" quantity="0" label="0 m"/>
              <ColorMapEntry color="#e8eff2" quantity="30" label="30 m"/>
              <ColorMapEntry color="#dde7eb" quantity="50" label="50 m"/>
              <ColorMapEntry color="#d3dfe4" quantity="70" label="70 m"/>
              <ColorMapEntry color="#c9d7dd" quantity="100" label="100 m"/>
              <ColorMapEntry color="#becfd6" quantity="140" label="140 m"/>
              <ColorMapEntry color="#b1c4cd" quantity="250" label="250 m"/>
              <ColorMapEntry color="#a6b9c2" quantity="1000" label="1000 m"/>
            </ColorMap>
          </RasterSymbolizer>
        </Rule>
      </FeatureTypeStyle>
    </UserStyle>
  </NamedLayer>
</StyledLayerDescriptor>
